#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "swathe/screen.hpp"

// Where things of the model are drawn, against places worked out here from the job's own numbers.
namespace swathe {
namespace {

/// The box of all marks of a layer that show a part, in pixels from the upper left corner.
plane::Box drawn_at(const ScreenPicture& picture, const std::string& what, const Subject& part) {
  plane::Box box;
  for (const screen::Layer& layer : picture.layers) {
    if (layer.what != what) continue;
    for (const draw::Mark& mark : layer.drawing.marks()) {
      const auto& shows = shown_by(mark).list();
      if (std::ranges::find(shows, part) == shows.end()) continue;
      if (const auto* line = std::get_if<LineMark>(&mark)) box.cover(bounds(line->path));
      if (const auto* fill = std::get_if<FillMark>(&mark))
        for (const plane::Path& outline : fill->outlines) box.cover(bounds(outline));
    }
  }
  REQUIRE_FALSE(box.empty());
  // CSS: 96 pixels an inch; y down.
  constexpr double kPx = 96 / 25.4;
  return {{kPx * box.lo.x, picture.height_px - kPx * box.hi.y},
          {kPx * box.hi.x, picture.height_px - kPx * box.lo.y}};
}

/// In the model's millimeters.
plane::Box in_mm(const ScreenPicture& picture, const plane::Box& px) {
  plane::Box box;
  box.cover(picture.map->to_mm(px.lo));
  box.cover(picture.map->to_mm(px.hi));
  return box;
}

void check_box(const plane::Box& box, const plane::Box& expected, double within) {
  CHECK(std::abs(box.lo.x - expected.lo.x) <= within);
  CHECK(std::abs(box.lo.y - expected.lo.y) <= within);
  CHECK(std::abs(box.hi.x - expected.hi.x) <= within);
  CHECK(std::abs(box.hi.y - expected.hi.y) <= within);
}

constexpr double kIn = 25.4;

TEST_CASE("map (1): there and back") {
  for (const bool mirrored : {false, true}) {
    const screen::Map map{0.37, {211.5, 98.25}, mirrored};
    for (const FlatPoint p : {FlatPoint{0, 0}, {120, -33}, {-7.5, 1e3}}) {
      const FlatPoint back = map.to_mm(map.to_px(p));
      CHECK(back.x == doctest::Approx(p.x));
      CHECK(back.y == doctest::Approx(p.y));
    }
    CHECK(map.to_px({10, 0}).x == doctest::Approx(211.5 + (mirrored ? -1 : 1) * 10 / 0.37));
    CHECK(map.to_px({0, 10}).y == doctest::Approx(98.25 - 10 / 0.37));  // up is a smaller y
  }
}

TEST_CASE("map (2): of the plan, by the job's own numbers") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  for (const ScreenOptions& size :
       {ScreenOptions{320, 240, 13, {}}, ScreenOptions{1366, 620, 13, {}},
        ScreenOptions{620, 360, 13, plane::Box{{0, 0}, {800, 500}}}}) {
    const ScreenPicture plan = screen_plan(made, labels, size);
    REQUIRE(plan.map);
    const double px = plan.map->mm_per_px;
    if (!size.window)  // 28 by 30 in, its own corner at 0, 0 as the job's frame is told
      check_box(in_mm(plan, drawn_at(plan, "frame", Subject::frame())),
                {{0, 0}, {28 * kIn, 30 * kIn}}, 0.3 * px);
    // Bracket 1: on the left, 9 in from the front corner, 3 in wide: from y = 30 - 9 - 3 to 30 - 9.
    const plane::Box bracket = in_mm(plan, drawn_at(plan, "bracket", Subject::bracket(1)));
    CHECK(std::abs(bracket.lo.y - 18 * kIn) <= 0.3 * px);
    CHECK(std::abs(bracket.hi.y - 21 * kIn) <= 0.3 * px);
    // It lies against the boards, which the slip fit of 1/16 in holds off the frame.
    CHECK(std::abs(bracket.lo.x + kIn / 16) <= 0.3 * px);
  }
}

TEST_CASE("map (2): of a cover, by places on its pattern") {
  const Font labels = test::label_font();
  // hook-and-loop covers are cut tighter than they lie: their pattern is not the cloth in place.
  for (const char* name : {"tin-heron", "kinds/hook-and-loop", "kinds/hexagon"}) {
    CAPTURE(name);
    const Made made = test::made(test::bytes_of(test::example(name)));
    for (const CoverShown shown : {CoverShown::OutsideUp, CoverShown::AsPrinted})
      for (std::size_t b = 0; b < made.patterns.size(); ++b) {
        const ScreenPicture cover = screen_cover(made, b, labels, {1366, 620, 13, {}}, shown);
        REQUIRE(cover.map);
        CHECK(cover.map->mirrored == (shown == CoverShown::AsPrinted));  // inside up is the default
        const double px = cover.map->mm_per_px;
        check_box(in_mm(cover, drawn_at(cover, "cloth", Subject::bumper(made.patterns[b].bumper))),
                  bounds(made.patterns[b].outline), 0.3 * px);
        for (const PlacedNumeral& placed : made.numerals_on_patterns()) {
          if (placed.bumper != static_cast<int>(b)) continue;
          plane::Box ink;
          for (const PlacedDigit& digit : placed.digits)
            ink.cover(bounds(made.numerals->outline_of(digit)));
          check_box(in_mm(cover, drawn_at(cover, "numeral", Subject::numeral(placed.place))), ink,
                    0.3 * px);
        }
      }
  }
}

TEST_CASE("map (2): of the cut-through, by the job's own numbers") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  for (const ScreenOptions& size :
       {ScreenOptions{320, 240, 13, {}}, ScreenOptions{1366, 620, 13, {}}}) {
    const ScreenPicture cut = screen_cut_through(made, labels, size);
    REQUIRE(cut.map);
    const double px = cut.map->mm_per_px;
    check_box(in_mm(cut, drawn_at(cut, "wood", Subject::boards())),
              {{0, 0}, {23.0 / 32 * kIn, 5 * kIn}}, 0.3 * px);
    check_box(in_mm(cut, drawn_at(cut, "padding", Subject::padding())),
              {{23.0 / 32 * kIn, 0}, {(23.0 / 32 + 2.5) * kIn, 5 * kIn}}, 0.3 * px);
    // The floor is 2 in below the boards.
    CHECK(std::abs(in_mm(cut, drawn_at(cut, "floor", Subject::frame())).lo.y + 2 * kIn) <=
          0.3 * px);
  }
}

}  // namespace
}  // namespace swathe
