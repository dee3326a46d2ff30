#include "sheet/fold_sheet.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "pattern/half_pattern.hpp"
#include "sheet/pattern_drawing.hpp"
#include "support/jobs.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

/// One bumper over the whole front, its number in the middle.
Job front_job() {
  Job job = test::demo_job();
  job.brackets.clear();
  BumperKeys front;
  front.name = "A";
  front.from = {"front", RunEnd::Corner{}};
  front.to = {"front", RunEnd::Corner{}};
  job.bumpers = {front};
  return job;
}

/// Two halves without brackets and number: corners on either side of the fold.
Job bare_halves() {
  Job job = test::demo_job();
  job.brackets.clear();
  job.number.clear();
  return job;
}

/// The same to be held by hook-and-loop: its hems run past the fold.
Job quick_halves() {
  Job job = bare_halves();
  job.cloth.fixing = Fixing::HookAndLoop;
  return job;
}

double cut_length(const Drawing& drawing) {
  double sum = 0;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* const line = std::get_if<LineMark>(&mark); line && line->kind == LineKind::Cut)
      sum += length(line->path);
  return sum;
}

TEST_CASE("fold sheet (1): twice the half's cuts are the cover's") {
  const Font face = test::label_font();
  for (const Job& job : {front_job(), bare_halves(), quick_halves()})
    for (const PaperFace up : {PaperFace::Inside, PaperFace::Outside}) {
      Job own = job;
      own.paper.face = up;
      const Made made = test::made_by_hand(own);
      REQUIRE(not_on_fold(made, 0) == "");
      const Drawing half = draw_half_pattern(made, 0, face, {0, 0});
      const Drawing whole = draw_pattern(made, 0, face, {0, 0});
      CHECK(cut_length(whole) > 1000);
      CHECK(2 * cut_length(half) == doctest::Approx(cut_length(whole)).epsilon(1e-6));
      // All of it lies on its side of the fold.
      const double to = 0.5 * made.patterns[0].cloth_length;
      for (const draw::Mark& mark : half.marks())
        if (const auto* const line = std::get_if<LineMark>(&mark);
            line && line->kind != LineKind::Match && line->kind != LineKind::Thin) {
          CHECK(bounds(line->path).lo.x > -1e-6);
          CHECK(bounds(line->path).hi.x < to + 1e-6);
        }
      // The half closed along its fold has half the cover's area.
      double area_of_half = 0;
      for (const plane::Path& snip : first_half(made.patterns[0], made.mark_names[0]).cuts)
        if (snip.vertices.size() > 4) {
          plane::Polygon outline;
          for (const plane::Vertex& v : snip.vertices) outline.push_back(v.at);
          area_of_half += std::abs(area(outline));
        }
      CHECK(2 * area_of_half == doctest::Approx(area(made.patterns[0].outline)).epsilon(1e-6));
    }
}

TEST_CASE("fold sheet (2): what lies beyond the fold is named on the half") {
  const Made made = test::made_by_hand(bare_halves());
  const Drawing half = draw_half_pattern(made, 0, test::label_font(), {0, 0});
  CHECK(test::says(half, "PLACE ON THE FOLD"));
  CHECK_FALSE(made.patterns[0].marks.empty());
  std::string all;
  for (const TextMark& text : test::texts_of(half)) all += "[" + text.text + "]";
  for (const MatchMark& mark : made.patterns[0].marks) {
    const bool named = all.find("[" + mark.name + "]") != std::string::npos ||
                       all.find("[" + mark.name + ",") != std::string::npos ||
                       all.find(", " + mark.name + "]") != std::string::npos;
    CHECK_MESSAGE(named, mark.name);
  }
  CHECK(all.find("corner front / left, left / back") != std::string::npos);
}

TEST_CASE("fold sheet: a cover whose halves differ is not cut on a fold, and why is told") {
  const Font face = test::label_font();
  const Made made = test::made_by_hand(test::demo_job());
  CHECK(not_on_fold(made, 0).find("windows") != std::string::npos);
  CHECK(not_on_fold(made, 0).find("holes to punch") != std::string::npos);
  CHECK(fold_sheet(made, 0, made.job.paper, face).pages.empty());
  Job off = front_job();  // a number out of the middle
  Made moved = test::made_by_hand(off);
  REQUIRE(not_on_fold(moved, 0) == "");
  moved.numerals->placed.front().center_s += 10;
  CHECK(not_on_fold(moved, 0) == "its numerals are not alike on both halves");
}

TEST_CASE("fold sheet: fewer pages than the whole cover, nothing over words") {
  const Font face = test::label_font();
  for (const Job& job : {front_job(), bare_halves()}) {
    std::size_t whole = 0, half = 0;
    for (const Sheet& sheet : all_sheets(test::made_by_hand(job), face)) {
      if (sheet.stem == "A-tiles") whole = sheet.pages.size();
      if (sheet.stem != "A-fold") continue;
      CHECK(sheet.kind == SheetKind::Fold);
      half = sheet.pages.size();
      for (const Page& page : sheet.pages) {
        for (const std::string& fault : test::text_faults(page, face)) CHECK_MESSAGE(false, fault);
        for (const std::string& fault : test::lines_through_text(page, face))
          CHECK_MESSAGE(false, fault);
      }
    }
    CHECK(half > 0);
    CHECK(half < whole);
  }
}

// At one joint of cover B's the words above leave 27 mm: for half a diamond, not for its name
// beside it.
TEST_CASE("fold sheet: a neighbor's name finds a place off words where its diamond has none") {
  const Font face = test::label_font();
  Job job = test::demo_job();
  job.frame = test::rectangle_frame(627.9896484876468, 797.2743087547942);
  job.units = Units::Millimeters;
  job.paper.face = PaperFace::Outside;
  job.paper.sheet = "a4";
  job.paper.width = mm(210);
  job.paper.height = mm(297);
  std::size_t pages = 0;
  for (const Sheet& sheet : all_sheets(test::made_by_hand(job), face)) {
    if (sheet.stem != "B-fold") continue;
    for (const Page& page : sheet.pages) {
      ++pages;
      for (const std::string& fault : test::text_faults(page, face)) FAIL_CHECK(fault);
      for (const std::string& fault : test::lines_through_text(page, face)) FAIL_CHECK(fault);
    }
  }
  CHECK(pages >= 10);
}

}  // namespace
}  // namespace swathe
