#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "book/book_sheet.hpp"
#include "sheet/cover_ordinates.hpp"
#include "sheet/template_parts.hpp"
#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

void check_words(const std::vector<Sheet>& sheets, const Font& font) {
  for (const Sheet& sheet : sheets)
    for (const Page& page : sheet.pages) {
      for (const std::string& fault : test::text_faults(page, font))
        CHECK_MESSAGE(false, (sheet.stem + ": " + fault));
      for (const std::string& fault : test::lines_through_text(page, font)) {
        if (fault == "a line runs through \"!\"") continue;  // inside a caution's triangle
        CHECK_MESSAGE(false, (sheet.stem + ": " + fault));
      }
      for (const TextMark& text : test::texts_of(page.drawing)) CHECK(text.height_mm >= 2.5);
    }
}

/// Lines that scissors or a pen follow lie on the page.
void check_ink_on_page(const std::vector<Sheet>& sheets) {
  for (const Sheet& sheet : sheets)
    for (const Page& page : sheet.pages) {
      const plane::Box paper = plane::Box{{0, 0}, {page.width_mm, page.height_mm}}.grown(1e-6);
      for (const draw::Mark& mark : page.drawing.marks())
        if (const auto* line = std::get_if<LineMark>(&mark))
          CHECK_MESSAGE(paper.holds(bounds(line->path)), sheet.stem);
    }
}

TEST_CASE("all sheets: the demo job's files, once each and in order") {
  const Made made = test::made_by_hand(test::demo_job());
  const std::vector<Sheet> sheets = all_sheets(made, test::label_font());
  std::vector<std::string> stems;
  for (const Sheet& sheet : sheets) stems.push_back(sheet.stem);
  std::set<std::string> different(stems.begin(), stems.end());
  CHECK(different.size() == stems.size());
  for (const char* stem : {"A-pattern", "A-tiles", "A-measures", "A-templates", "B-pattern",
                           "B-tiles", "B-measures", "B-templates", "numerals", "placing", "book"})
    CHECK_MESSAGE(different.count(stem) == 1, std::string(stem));
  CHECK(stems[0] == "00-start-here");
  CHECK(stems[1] == "test-page");
  CHECK(stems.back() == "book");
}

TEST_CASE("all sheets: no text lies over another, over a line or off its page") {
  const Font font = test::label_font();
  const char* names[] = {"letter", "a4", "tabloid"};
  const double sizes[][2] = {{215.9, 279.4}, {210, 297}, {279.4, 431.8}};  // ANSI Y14.1, ISO 216
  test::for_drawn_cases("sheet-words", 8, [&](std::mt19937_64& rng) {
    Job job = test::demo_job();
    job.frame = test::rectangle_frame(test::drawn(rng, 550, 900), test::drawn(rng, 550, 900));
    job.units = rng() % 2 == 0 ? Units::Inches : Units::Millimeters;
    job.paper.face = rng() % 2 == 0 ? PaperFace::Inside : PaperFace::Outside;
    const std::size_t kind = rng() % 4;
    if (kind == 1) {
      job.padding.corner = PaddingCorner::Mitred;
      job.cloth.relief = Relief::Sewn;
    }
    if (kind == 2) job.cloth.fixing = Fixing::HookAndLoop;
    if (kind == 3) {
      job.padding.form = PaddingForm::Block;
      job.padding.corner = PaddingCorner::Mitred;
      job.number.clear();
      job.brackets.clear();
    }
    CAPTURE(kind);
    const std::size_t paper = rng() % 3;
    job.paper.sheet = names[paper];
    job.paper.width = mm(sizes[paper][0]);
    job.paper.height = mm(sizes[paper][1]);
    const std::vector<Sheet> sheets = all_sheets(test::made_by_hand(job), font);
    check_words(sheets, font);
    check_ink_on_page(sheets);
  });
}

TEST_CASE("measuring sheet: every figure of the model is printed on it") {
  for (const Units units : {Units::Inches, Units::Millimeters}) {
    Job job = test::demo_job();
    job.units = units;
    const Made made = test::made_by_hand(job);
    const RunningDimensions figures = running_dimensions(made, 0);
    std::set<std::string> printed;
    std::string said;  // a cell's lines follow each other
    for (const Sheet& sheet : all_sheets(made, test::label_font()))
      if (sheet.stem == "A-measures")
        for (const Page& page : sheet.pages)
          for (const TextMark& text : test::texts_of(page.drawing)) {
            printed.insert(text.text);
            said += text.text + " ";
          }
    for (const auto* list : {&figures.along, &figures.across})
      for (const Running& running : *list) {
        CHECK(printed.count(dimension(mm(running.at_mm), units)) == 1);
        CHECK_MESSAGE(said.find(running.what) != std::string::npos, running.what);
      }
  }
}

TEST_CASE("measuring sheet: one page a bumper, on letter and on A4") {
  for (const char* paper : {"letter", "a4"}) {
    Job job = test::demo_job();
    const std::optional<Paper> size = find_paper(paper);
    REQUIRE(size);
    job.paper.sheet = paper;
    job.paper.width = size->width;
    job.paper.height = size->height;
    std::size_t layouts = 0;
    for (const Sheet& sheet : all_sheets(test::made_by_hand(job), test::label_font())) {
      if (sheet.kind != SheetKind::Measures) continue;
      CHECK(sheet.pages.size() == 1);
      ++layouts;
    }
    CHECK(layouts == 2);
  }
}

TEST_CASE("numeral sheets: every digit is there at full size") {
  const Made made = test::made_by_hand(test::demo_job());
  double cut = 0, wanted = 0;
  for (const Sheet& sheet : all_sheets(made, test::label_font()))
    if (sheet.kind == SheetKind::Numerals)
      for (const Page& page : sheet.pages)
        for (const draw::Mark& mark : page.drawing.marks())
          if (const auto* fill = std::get_if<FillMark>(&mark); fill && fill->kind == LineKind::Cut)
            for (const plane::Path& path : fill->outlines) cut += length(path);
  for (const Digit& digit : made.numerals->digits)
    for (const plane::Polygon& contour : digit.stencil) wanted += length(closed_path(contour));
  CHECK(cut == doctest::Approx(wanted));
}

TEST_CASE("numeral and template sheets: what is larger than the paper comes in tiles") {
  Job job = test::demo_job();
  job.paper.sheet = "own size";
  job.paper.width = mm(140);
  job.paper.height = mm(150);
  const Made made = test::made_by_hand(job);
  const Font font = test::label_font();
  for (const Sheet& sheet : all_sheets(made, font))
    if (sheet.kind == SheetKind::Numerals || sheet.kind == SheetKind::Templates) {
      CHECK(sheet.pages.size() >= 5);
      for (const Page& page : sheet.pages)
        CHECK(page.width_mm + page.height_mm == doctest::Approx(290));
    }
}

TEST_CASE("template parts (1): every corner, half end and window has its template, once") {
  const Made made = test::made_by_hand(test::demo_job());
  for (std::size_t b = 0; b < 2; ++b) {
    std::multiset<std::string> uses;
    const std::vector<TemplatePart> parts = template_parts(made, b);
    for (const TemplatePart& part : parts)
      for (const TemplateUse& use : part.uses) uses.insert(use.where);
    for (const PatternCorner& corner : made.patterns[b].corners)
      for (const char* half : {", top", ", bottom"})
        CHECK(uses.count("corner " + corner.side_before + " / " + corner.side_after + half) == 1);
    for (const char* end : {"end on front, top half", "end on front, bottom half",
                            "end on back, top half", "end on back, bottom half"})
      CHECK(uses.count(end) == 1);
    CHECK(uses.count("window of bracket 2, back") == (b == 0 ? 1u : 0u));
    // A rectangle of one section: all its corners are alike, and all its ends.
    CHECK(parts.size() == (b == 0 ? 3 : 2));
  }
}

TEST_CASE("book: the order of work names only what the covers have") {
  const Font font = test::label_font();
  const auto said = [&](const Job& job, const std::string& words) {
    for (const Sheet& sheet : all_sheets(test::made_by_hand(job), font))
      if (sheet.kind == SheetKind::Book)
        for (const Page& page : sheet.pages)
          if (test::says(page.drawing, words)) return true;
    return false;
  };
  Job job = test::demo_job();
  CHECK(said(job, "Drive staples"));
  CHECK(said(job, "Cut the windows last"));
  CHECK_FALSE(said(job, "hook-and-loop"));
  CHECK_FALSE(said(job, "@"));
  job.cloth.fixing = Fixing::HookAndLoop;
  job.brackets.clear();
  CHECK_FALSE(said(job, "Drive staples"));
  CHECK(said(job, "hook-and-loop"));
  CHECK_FALSE(said(job, "Staple gun for staples"));
  double strips = 0;
  for (const Pattern& pattern : test::made_by_hand(job).patterns)
    for (const plane::Path& strip : pattern.strips)
      strips += std::max(bounds(strip).width(), bounds(strip).height());
  const double both_colors = 2 * strips / 25.4;
  CHECK(said(job, fmt::format("{} in", static_cast<int>(std::ceil(both_colors)))));
  CHECK_FALSE(said(job, "Cut the windows last"));
}

TEST_CASE("all sheets: a cover like an earlier one is printed once, and both say so") {
  const Font font = test::label_font();
  Job job = test::demo_job();
  job.brackets.clear();
  job.number.clear();  // the halves of a rectangle are alike, but for what stands on them
  std::set<std::string> stems;
  for (const Sheet& sheet : all_sheets(test::made_by_hand(job), font)) {
    stems.insert(sheet.stem);
    const auto says = [&](const char* words) {
      return std::ranges::any_of(sheet.pages,
                                 [&](const Page& page) { return test::says(page.drawing, words); });
    };
    const bool of_a = sheet.stem.starts_with("A-"), of_b = sheet.stem.starts_with("B-");
    CHECK_MESSAGE(says("Same as bumper A: print A once") == of_b, sheet.stem);
    CHECK_MESSAGE(says("For bumper A, use") == of_a, sheet.stem);
  }
  // Drawings for cutters and the figures are there for each: they take no sheets of the printer's,
  // or one.
  for (const char* stem :
       {"A-pattern", "A-tiles", "A-fold", "A-measures", "A-templates", "B-pattern", "B-measures"})
    CHECK_MESSAGE(stems.count(stem) == 1, std::string(stem));
  for (const char* stem : {"B-tiles", "B-fold", "B-templates"})
    CHECK_MESSAGE(stems.count(stem) == 0, std::string(stem));
}

TEST_CASE("book: the worked half's boards and padding stand there") {
  // Board and padding arithmetic worked by hand; common practice, no source:
  // frame 700 by 820 mm, board 18, noodles 63.5, clearance 6: boards 820 and 362, noodles 856 and
  // 425.5.
  Job job = test::c_halves(700, 820);
  job.frame.fit = mm(0);
  job.boards.thickness = mm(18);
  job.padding.diameter = mm(63.5);
  for (BumperKeys& keys : job.bumpers) keys.end_clearance = mm(6);
  job.units = Units::Millimeters;
  const Made made = test::made_by_hand(job);
  std::multiset<std::string> printed;
  for (const Sheet& sheet : all_sheets(made, test::label_font()))
    if (sheet.kind == SheetKind::Book)
      for (const Page& page : sheet.pages)
        for (const TextMark& text : test::texts_of(page.drawing))
          if (text.anchor == draw::Anchor::Right) printed.insert(text.text);  // in a list
  CHECK(printed.count("820") == 2);  // one side board a half
  CHECK(printed.count("362") == 4);
  CHECK(printed.count("856") == 2);
  CHECK(printed.count("426") == 4);  // to the nearest mm
}

TEST_CASE("book: a length of padding round many sides keeps to its page") {
  Job job = test::c_halves(700, 700);
  job.frame.corners.clear();
  job.frame.sides.clear();
  for (int k = 0; k < 12; ++k) {
    const double bearing = std::numbers::pi * k / 6;
    job.frame.corners.push_back({400 * std::cos(bearing), 400 * std::sin(bearing)});
    job.frame.sides.push_back(fmt::format("side {}", k));
  }
  job.bumpers = {test::half("A", "side 0", "side 11")};
  job.boards.joint = Joint::Mitred;
  job.boards.lapping = job.padding.lapping = {};
  job.padding.corner = PaddingCorner::Bent;
  const Sheet book = book_sheet(test::made(job_text(job)), job.paper, test::label_font());
  check_words({book}, test::label_font());
  check_ink_on_page({book});
}

}  // namespace
}  // namespace swathe
