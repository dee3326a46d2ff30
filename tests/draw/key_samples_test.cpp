#include <doctest/doctest.h>

#include <algorithm>
#include <vector>

#include "draw/furniture.hpp"
#include "draw/marks.hpp"
#include "support/label_font.hpp"

namespace swathe {
namespace {

/// Corners of every line and fill of a kind, from the lower left of them all.
std::vector<std::vector<FlatPoint>> shapes_of(const Drawing& drawing, LineKind kind) {
  std::vector<std::vector<FlatPoint>> shapes;
  plane::Box all;
  const auto take = [&](const plane::Path& path) {
    shapes.push_back(flatten(path, 0.01));
    all.cover(bounds(path));
  };
  for (const draw::Mark& mark : drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark); line && line->kind == kind)
      take(line->path);
    if (const auto* const fill = std::get_if<FillMark>(&mark); fill && fill->kind == kind)
      for (const plane::Path& outline : fill->outlines) take(outline);
  }
  for (auto& shape : shapes)
    for (FlatPoint& p : shape) p = p - all.lo;
  return shapes;
}

Drawing key_of(LineKind kind) {
  Drawing key;
  draw_line_key(key, test::label_font(), {10, 100}, {kind});
  return key;
}

/// The sample and the mark have the same corners in the same order.
void check_same(LineKind kind, const Drawing& mark) {
  CAPTURE(style_of(kind).layer);
  const auto sample = shapes_of(key_of(kind), kind), drawn = shapes_of(mark, kind);
  REQUIRE(!drawn.empty());
  REQUIRE(sample.size() == drawn.size());
  for (std::size_t k = 0; k < drawn.size(); ++k) {
    REQUIRE(sample[k].size() == drawn[k].size());
    for (std::size_t n = 0; n < drawn[k].size(); ++n)
      CHECK(apart(sample[k][n], drawn[k][n]) < 1e-9);
  }
}

}  // namespace

// What is expected here is the mark on the sheet itself: a key must show what the sheet has.
TEST_CASE("line key: its samples are the sheet's own marks") {
  Drawing staple, punch, match, window, grain;
  draw_staple(staple, {40, 30}, false);
  check_same(LineKind::Staple, staple);
  draw_punch(punch, {40, 30}, 1.0);
  check_same(LineKind::Punch, punch);
  draw_match(match, {40, 30}, false, 0.5);
  check_same(LineKind::Match, match);
  draw_long_grain(grain, {40, 30}, {64, 30});
  check_same(LineKind::Grain, grain);

  // A window's corner squares, as large as the sheet's.
  draw_window(window, plane::rectangle({0, 0}, {50, 50}));
  const auto on_sheet = shapes_of(window, LineKind::Thin);
  const auto in_key = shapes_of(key_of(LineKind::CutLast), LineKind::Thin);
  REQUIRE(on_sheet.size() == 4);
  REQUIRE(in_key.size() == 2);
  CHECK(apart(in_key[0][0], in_key[0][2]) ==
        doctest::Approx(apart(on_sheet[0][0], on_sheet[0][2])));
}

TEST_CASE("line key: a scale's ticks are as long as the scale's own") {
  Drawing scale;
  draw_check_scale(scale, test::label_font(), {0, 50}, 100, "100 mm");
  const auto ticks = [](const Drawing& drawing) {
    std::vector<double> lengths;
    for (const auto& shape : shapes_of(drawing, LineKind::Scale))
      if (shape.front().x == shape.back().x) lengths.push_back(apart(shape.front(), shape.back()));
    return lengths;
  };
  REQUIRE(ticks(scale).size() == 2);
  REQUIRE(ticks(key_of(LineKind::Scale)).size() == 2);
  CHECK(ticks(key_of(LineKind::Scale))[0] == doctest::Approx(ticks(scale)[0]));
}

TEST_CASE("line key: nothing of it is to be cut, and each row has room for its sample") {
  for (int k = 0; k <= static_cast<int>(LineKind::Outline); ++k) {
    const auto kind = static_cast<LineKind>(k);
    CAPTURE(style_of(kind).layer);
    const Font font = test::label_font();
    Drawing key;
    const plane::Box box = draw_line_key(key, font, {10, 100}, {kind});
    for (const draw::Mark& mark : key.marks()) {
      if (const auto* const line = std::get_if<LineMark>(&mark)) {
        CHECK(line->sample);
        CHECK(box.grown(1e-6).holds(bounds(line->path)));
      }
      if (const auto* const fill = std::get_if<FillMark>(&mark))
        for (const plane::Path& outline : fill->outlines)
          CHECK(box.grown(1e-6).holds(bounds(outline)));
    }
  }
}

}  // namespace swathe
