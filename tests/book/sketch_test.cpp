#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>

#include "draw/measures.hpp"
#include "sheet/plan_picture.hpp"
#include "sheet/section_picture.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"

// The sketch read back with a rule: what is printed against what is drawn to scale.
namespace swathe {
namespace {

constexpr double kThirtySecond = 25.4 / 32 + 1e-6;

/// The figure that a text ends with, in the job's units.
std::optional<Length> figure_of(const std::string& text, const std::string& before, Units units) {
  if (!text.starts_with(before + " ")) return std::nullopt;
  return parse_length(text.substr(before.size() + 1), units);
}

double longest_edge(const plane::Path& path) {
  double longest = 0;
  for (std::size_t k = 0; k < path.vertices.size(); ++k)
    longest = std::max(
        longest, apart(path.vertices[k].at, path.vertices[(k + 1) % path.vertices.size()].at));
  return longest;
}

/// A board is sawn no longer than it is, and shorter by less than 1/16 in (or 1 mm, which is less).
bool rounded_down(double printed, double length) {
  constexpr double kDrawn = 0.02;  // what the drawing's own scale loses
  return printed <= length + kDrawn && length - printed < 25.4 / 16 + kDrawn;
}

TEST_CASE("plan: boards are drawn to scale, and printed lengths are rounded down from that") {
  const Font labels = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    const Picture picture = plan_picture(made, labels, 190, 215);
    // The frame's own outline gives the scale: the first closed line in the frame's kind.
    double scale = 0;
    std::vector<double> drawn, printed;
    for (const draw::Mark& mark : picture.drawing.marks()) {
      const auto* line = std::get_if<LineMark>(&mark);
      if (line && line->kind == LineKind::Outline && scale == 0) {
        const auto& corners = made.job.frame.corners;
        scale = apart(line->path.vertices[0].at, line->path.vertices[1].at) /
                apart(corners[0], corners[1]);
      }
      const auto* fill = std::get_if<FillMark>(&mark);
      if (fill && fill->color == kWood)
        for (const plane::Path& board : fill->outlines) drawn.push_back(longest_edge(board));
    }
    REQUIRE(scale > 0);
    std::multiset<std::string> words;
    for (const TextMark& text : test::texts_of(picture.drawing)) {
      words.insert(text.text);
      if (const auto length = figure_of(text.text, "board", made.job.units))
        printed.push_back(length->mm());
    }
    REQUIRE(printed.size() == drawn.size());
    REQUIRE(drawn.size() == made.boards.size());
    std::ranges::sort(drawn);
    std::ranges::sort(printed);
    for (std::size_t k = 0; k < drawn.size(); ++k)
      CHECK(rounded_down(printed[k], drawn[k] / scale));
    // Nothing is left unsaid: each side's length, each bumper on each of its sides, each gap.
    const auto& corners = made.job.frame.corners;
    for (std::size_t k = 0; k < corners.size(); ++k) {
      const auto named = std::ranges::find_if(words, [&](const std::string& text) {
        return text.starts_with(made.job.frame.sides[k] + " ");
      });
      REQUIRE(named != words.end());
      const auto length = figure_of(*named, made.job.frame.sides[k], made.job.units);
      REQUIRE(length);
      CHECK(std::abs(length->mm() - apart(corners[k], corners[(k + 1) % corners.size()])) <=
            kThirtySecond);
    }
    for (const Wrap& wrap : made.wraps)
      CHECK(words.count(wrap.run().name) >= wrap.run().sides.size());
    const auto starting = [&](const char* head) {
      return std::ranges::count_if(words,
                                   [&](const std::string& text) { return text.starts_with(head); });
    };
    CHECK(starting("gap ") == std::ssize(made.bare_gaps));
    CHECK(starting("over all ") == 2);
    CHECK(starting("bracket ") == std::ssize(made.job.brackets));
  }
}

TEST_CASE("section: each height is that of its leader above the floor, each depth from the back") {
  const Font labels = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    const Picture picture = section_picture(made, labels, 190, 96);
    // The board, drawn to scale, is as high as the job says.
    plane::Box board;
    for (const draw::Mark& mark : picture.drawing.marks())
      if (const auto* fill = std::get_if<FillMark>(&mark); fill && fill->color == kWood)
        board.cover(bounds(fill->outlines.front()));
    const double scale = board.height() / made.job.boards.height.mm();
    const double floor = board.lo.y - scale * made.job.frame.floor_gap.mm();
    const double back = board.lo.x;
    std::size_t read = 0;
    for (const TextMark& text : test::texts_of(picture.drawing)) {
      const bool height =
          text.text.find(" to the ") != std::string::npos || text.text.ends_with(" floor");
      if (!height && text.turn == 0) continue;
      std::string figure = text.text.substr(0, text.text.find(" to the "));
      figure = figure.substr(0, figure.find(" floor"));
      figure = figure.substr(0, figure.find(" ("));
      const auto length = parse_length(figure, made.job.units);
      REQUIRE_MESSAGE(length, text.text);
      // The leader that ends beside the text starts at the place it tells of.
      double nearest = 1e9;
      FlatPoint from;
      for (const draw::Mark& mark : picture.drawing.marks())
        if (const auto* line = std::get_if<LineMark>(&mark);
            line && line->path.vertices.size() == 4 && !line->path.closed)
          if (const double off = apart(line->path.vertices.back().at, text.at); off < nearest) {
            nearest = off;
            from = line->path.vertices.front().at;
          }
      const double drawn = height ? from.y - floor : from.x - back;
      // The outer face of the cloth is told at the padding's, half its thickness further in.
      const double cloth = made.job.cloth.thickness.mm();
      CHECK(std::abs(drawn / scale - length->mm()) <= kThirtySecond + cloth);
      ++read;
    }
    CHECK(read >= 6);
  }
}

}  // namespace
}  // namespace swathe
