#include "sheet/pattern_drawing.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"

namespace swathe {
namespace {

Page page_of(const Made& made, std::size_t bumper, const Font& face) {
  const Pattern& pattern = made.patterns[bumper];
  return {pattern.cloth_length, pattern.cloth_width, draw_pattern(made, bumper, face, {0, 0}), ""};
}

TEST_CASE("pattern drawing: every part of the pattern is there, once") {
  const Made made = test::made_by_hand(test::demo_job());
  const Font face = test::label_font();
  for (std::size_t b = 0; b < 2; ++b) {
    const Pattern& pattern = made.patterns[b];
    const Drawing drawing = draw_pattern(made, b, face, {0, 0});
    std::size_t windows = 0, holes = 0;
    for (const BracketOnPattern& bracket : pattern.brackets) {
      windows += bracket.windows.size();
      holes += bracket.holes.size();
    }
    const auto lines = [&](LineKind kind) {
      return static_cast<std::size_t>(test::count_lines(drawing, kind));
    };
    CHECK(lines(LineKind::Cut) == 1 + pattern.snips.size());
    CHECK(lines(LineKind::CutLast) == windows);
    CHECK(lines(LineKind::Fold) == pattern.pleats.size() + pattern.hems.size());
    CHECK(lines(LineKind::Staple) == pattern.staples.size());
    CHECK(lines(LineKind::Punch) == 3 * holes);
    for (const MatchMark& mark : pattern.marks) CHECK(test::says(drawing, mark.name));
    for (const Staple& staple : pattern.staples)
      if (staple.order % 5 == 0) CHECK(test::says(drawing, std::to_string(staple.order)));
    for (const char* words : {"TOP", "INSIDE UP", "LONG GRAIN", "TONGUE", "EAR", "board edge",
                              "staple line", "corner ", "end of the bumper", "cut 1 red, 1 blue"})
      CHECK_MESSAGE(test::says(drawing, words), std::string(words));
    CHECK(test::says(drawing, "BUMPER " + pattern.bumper));
  }
}

TEST_CASE("pattern drawing: the cut line on the sheet is as long as the pattern's outline") {
  // Lengths and areas do not change when a pattern is moved or mirrored.
  Job job = test::demo_job();
  for (const PaperFace side : {PaperFace::Inside, PaperFace::Outside}) {
    job.paper.face = side;
    const Made made = test::made_by_hand(job);
    const Drawing drawing = draw_pattern(made, 0, test::label_font(), {7, 9});
    const auto cut = std::ranges::find_if(drawing.marks(), [](const draw::Mark& mark) {
      const auto* line = std::get_if<LineMark>(&mark);
      return line && line->kind == LineKind::Cut;
    });
    REQUIRE(cut != drawing.marks().end());
    const plane::Path& path = std::get<LineMark>(*cut).path;
    CHECK(length(path) == doctest::Approx(length(closed_path(made.patterns[0].outline))));
    CHECK(bounds(path).lo.x == doctest::Approx(7));
    CHECK(bounds(path).lo.y == doctest::Approx(9));
    CHECK(bounds(path).width() == doctest::Approx(made.patterns[0].cloth_length));
  }
}

TEST_CASE(
    "pattern drawing: seen from the inside the start lies on the right, and words still read") {
  Job job = test::demo_job();
  job.paper.face = PaperFace::Inside;
  const Made inside = test::made_by_hand(job);
  job.paper.face = PaperFace::Outside;
  const Made outside = test::made_by_hand(job);
  const Pattern& pattern = inside.patterns[0];
  const FlatPoint mark = pattern.marks.front().at;
  const double in = pattern_placement(inside, 0, {})(mark).x;
  const double out = pattern_placement(outside, 0, {})(mark).x;
  CHECK(in + out == doctest::Approx(pattern.cloth_length));
  const Font face = test::label_font();
  CHECK(test::says(draw_pattern(inside, 0, face, {}), "INSIDE UP"));
  CHECK(test::says(draw_pattern(outside, 0, face, {}), "OUTSIDE UP"));
  CHECK(test::says(draw_pattern(inside, 0, face, {}), "turn the cloth over"));
  CHECK_FALSE(test::says(draw_pattern(outside, 0, face, {}), "turn the cloth over"));
}

TEST_CASE("drawn jobs: words on a pattern keep off one another, off lines and inside the cloth") {
  const Font face = test::label_font();
  test::for_drawn_cases("pattern-words", 12, [&](std::mt19937_64& rng) {
    Job job = test::demo_job();
    job.frame = test::rectangle_frame(test::drawn(rng, 450, 900), test::drawn(rng, 450, 900));
    job.padding.diameter = mm(test::drawn(rng, 50, 70));
    job.paper.face = rng() % 2 == 0 ? PaperFace::Inside : PaperFace::Outside;
    job.brackets[0].at = test::from_start("left", mm(test::drawn(rng, 60, 250)));
    job.brackets[1].at = test::from_start("back", mm(test::drawn(rng, 10, 120)));
    const Made made = test::made_by_hand(job);
    for (std::size_t b = 0; b < 2; ++b) {
      const Page page = page_of(made, b, face);
      for (const std::string& fault : test::text_faults(page, face)) CHECK_MESSAGE(false, fault);
      for (const std::string& fault : test::lines_through_text(page, face))
        CHECK_MESSAGE(false, fault);
      for (const TextMark& text : test::texts_of(page.drawing)) CHECK(text.height_mm >= 3.5);
    }
  });
}

}  // namespace
}  // namespace swathe
