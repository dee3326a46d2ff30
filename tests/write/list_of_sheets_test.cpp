#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "book/book_sheet.hpp"
#include "book/start_sheet.hpp"
#include "job/limits.hpp"
#include "sheet/fold_sheet.hpp"
#include "sheet/measuring_sheet.hpp"
#include "sheet/numeral_sheets.hpp"
#include "sheet/pattern_sheet.hpp"
#include "sheet/placing_sheet.hpp"
#include "sheet/same_cover_words.hpp"
#include "sheet/template_sheets.hpp"
#include "sheet/test_page.hpp"
#include "sheet/view_sheet.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/made_examples.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"
#include "tile/correction.hpp"

// What is listed is what is drawn, sheet by sheet: the list decides without drawing.
namespace swathe {
namespace {

Job on_paper(Job job, const char* name, double width_mm, double height_mm) {
  job.paper.sheet = name;
  job.paper.width = mm(width_mm);
  job.paper.height = mm(height_mm);
  return job;
}

/// Papers that ask most of the list: a roll, a printer that is made up for, and sheets too small
/// for tiles and for most templates.
std::vector<Job> hard_jobs() {
  std::vector<Job> jobs;
  const Job demo = test::demo_job();
  jobs.push_back(on_paper(demo, kRoll.data(), 914.4, kPaperSize.most.mm()));
  jobs.push_back(demo);
  jobs.back().paper.measured = {mm(99.2), mm(101.1)};
  jobs.push_back(on_paper(demo, kRoll.data(), 610, kPaperSize.most.mm()));
  jobs.back().paper.measured = {mm(99.2), mm(101.1)};
  for (const double side : {100.0, 130.0}) jobs.push_back(on_paper(demo, "own size", side, side));
  jobs.push_back(on_paper(demo, "own size", 100, 400));
  Job plain = demo;  // halves alike, on a fold; no number, so neither numerals nor views
  plain.number.clear();
  plain.brackets.clear();
  jobs.push_back(plain);
  jobs.push_back(on_paper(plain, "own size", 100, 100));
  return jobs;
}

/// Those, and every example.
std::vector<Made> all_made(const std::vector<Job>& jobs) {
  std::vector<Made> all;
  for (const Job& job : jobs) all.push_back(test::made_by_hand(job));
  for (const auto& path : test::example_jobs()) all.push_back(test::made_example(path));
  return all;
}

/// Every sheet that a job may have, drawn whether it has pages or not: the slow way to the list.
std::vector<Sheet> sheets_with_pages(const Made& made, const Font& labels) {
  const PaperKeys own = before_stretch(made.job.paper);
  PaperKeys office = made.job.paper;
  if (office.sheet == kRoll) {
    const auto named = find_paper(made.job.units == Units::Inches ? "letter" : "a4");
    office.sheet = named->name;
    office.width = named->width;
    office.height = named->height;
  }
  office = before_stretch(office);
  std::vector<Sheet> all = {start_sheet(made, print_ways(made, labels), office, labels),
                            test_page(made, own, labels)};
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    const bool own_print = !is_cut_from_another(made, b);
    all.push_back(pattern_sheet(made, b, labels));
    if (own_print) all.push_back(tiles_sheet(made, b, own, labels));
    if (own_print) all.push_back(fold_sheet(made, b, own, labels));
    all.push_back(measuring_sheet(made, b, office, labels));
    if (own_print) all.push_back(template_sheets(made, b, own, labels));
  }
  all.push_back(numeral_sheets(made, own, labels));
  all.push_back(placing_sheet(made, own, labels));
  all.push_back(view_sheet(made, office, labels));
  all.push_back(book_sheet(made, office, labels));
  std::erase_if(all, [](const Sheet& sheet) { return sheet.pages.empty(); });
  return all;
}

void check_same_name(const SheetName& a, const SheetName& b) {
  CHECK(a.stem == b.stem);
  CHECK(a.title == b.title);
  CHECK(a.kind == b.kind);
  CHECK(a.paper == b.paper);
}

std::vector<SheetKind> kinds_of(const std::vector<ListedSheet>& list) {
  std::vector<SheetKind> kinds;
  for (const ListedSheet& listed : list) kinds.push_back(listed.kind);
  return kinds;
}

TEST_CASE("list of sheets (1): exactly those that have pages, whatever the paper") {
  const Font labels = test::label_font();
  for (const Made& made : all_made(hard_jobs())) {
    CAPTURE(made.job.source);
    CAPTURE(made.job.paper.sheet);
    CAPTURE(made.job.paper.width.mm());
    const std::vector<ListedSheet> list = list_sheets(made, labels);
    const std::vector<Sheet> drawn = sheets_with_pages(made, labels);
    REQUIRE(list.size() == drawn.size());
    for (std::size_t k = 0; k < list.size(); ++k) check_same_name(list[k], drawn[k]);
  }
}

TEST_CASE("list of sheets: what small paper and a job without a number leave out") {
  const Font labels = test::label_font();
  Job job = on_paper(test::demo_job(), "own size", 100, 100);
  const auto has = [&](SheetKind kind) {
    return std::ranges::count(kinds_of(list_sheets(test::made_by_hand(job), labels)), kind);
  };
  CHECK(has(SheetKind::Pattern) == 2);
  CHECK(has(SheetKind::Tiles) == 0);  // 74.6 mm inside the margins: tiles want 110 by 80
  CHECK(has(SheetKind::Numerals) == 1);
  CHECK(has(SheetKind::TestPage) == 0);  // no 100 mm scale fits
  job = test::demo_job();
  CHECK(has(SheetKind::Tiles) == 2);
  CHECK(has(SheetKind::Fold) == 1);  // B; A has a window on one half
  job.number.clear();
  job.brackets.clear();
  CHECK(has(SheetKind::Fold) > 0);
  CHECK(has(SheetKind::Numerals) == 0);
  CHECK(has(SheetKind::Placing) == 0);
  CHECK(has(SheetKind::TestPage) == 1);
  CHECK(has(SheetKind::Views) == 0);
}

TEST_CASE("list of sheets: each says whose cover it is of") {
  const Made made = test::made_by_hand(test::demo_job());
  for (const ListedSheet& listed : list_sheets(made, test::label_font())) {
    CAPTURE(listed.stem);
    const bool of_all = listed.kind == SheetKind::Start || listed.kind == SheetKind::TestPage ||
                        listed.kind == SheetKind::Numerals || listed.kind == SheetKind::Placing ||
                        listed.kind == SheetKind::Views || listed.kind == SheetKind::Book;
    CHECK(listed.bumper.has_value() != of_all);
    if (listed.bumper) CHECK(listed.stem.starts_with(made.patterns[*listed.bumper].bumper + "-"));
  }
}

/// A sheet's bytes in every format of paper and drawing programs.
std::vector<std::string> bytes_of_sheet(const Sheet& sheet, const Font& labels) {
  std::vector<std::string> bytes = {to_pdf(sheet, labels)};
  for (const Page& page : sheet.pages) bytes.push_back(to_svg(page, sheet.title, labels));
  return bytes;
}

TEST_CASE("make_sheet (1): one sheet alone has the bytes it has among all") {
  const Font labels = test::label_font();
  for (const Job& job : hard_jobs()) {
    CAPTURE(job.paper.sheet);
    CAPTURE(job.paper.width.mm());
    const Made made = test::made_by_hand(job);
    const std::vector<Sheet> all = all_sheets(made, labels);
    std::vector<ListedSheet> list = list_sheets(made, labels);
    REQUIRE(list.size() == all.size());
    // The last first, so that none comes after those it has before it in a run.
    for (std::size_t k = list.size(); k-- > 0;) {
      const Sheet alone = make_sheet(made, list[k], labels);
      check_same_name(alone, all[k]);
      CHECK(bytes_of_sheet(alone, labels) == bytes_of_sheet(all[k], labels));
      for (std::size_t page = 0; page < alone.pages.size(); ++page) {
        CHECK(alone.pages[page].print.x == all[k].pages[page].print.x);
        CHECK(alone.pages[page].print.y == all[k].pages[page].print.y);
      }
    }
  }
}

TEST_CASE("told_sheets (1): what is told without drawing is what is drawn, whatever the paper") {
  const Font labels = test::label_font();
  std::vector<Job> jobs = hard_jobs();
  // Pages as long as a PDF may have, made up for an error.
  jobs.push_back(on_paper(test::demo_job(), "own size", 150, kPaperSize.most.mm()));
  jobs.back().paper.measured = {mm(101.1), mm(99.2)};
  for (const Made& made : all_made(jobs)) {
    CAPTURE(made.job.source);
    CAPTURE(made.job.paper.sheet);
    CAPTURE(made.job.paper.width.mm());
    const std::vector<ToldSheet> sheets = told_sheets(made, labels);
    const std::vector<ToldSheet> drawn = told(all_sheets(made, labels));
    REQUIRE(sheets.size() == drawn.size());
    for (std::size_t k = 0; k < sheets.size(); ++k) {
      CAPTURE(sheets[k].stem);
      check_same_name(sheets[k], drawn[k]);
      CHECK(sheets[k].pages == drawn[k].pages);
      CHECK(sheets[k].too_large_for_pdf == drawn[k].too_large_for_pdf);
    }
  }
}

TEST_CASE("blank pages: as many as are drawn, of their sizes and names") {
  const Font labels = test::label_font();
  for (const Job& job : hard_jobs()) {
    const Made made = test::made_by_hand(job);
    CAPTURE(job.paper.sheet);
    CAPTURE(job.paper.width.mm());
    const PaperKeys paper = before_stretch(job.paper);
    const auto check = [&](const auto& sheet_of) {
      const Sheet drawn = sheet_of(PageFill::Drawn), blank = sheet_of(PageFill::Blank);
      CAPTURE(drawn.stem);
      check_same_name(blank, drawn);
      REQUIRE(blank.pages.size() == drawn.pages.size());
      for (std::size_t k = 0; k < drawn.pages.size(); ++k) {
        CHECK(blank.pages[k].name == drawn.pages[k].name);
        CHECK(blank.pages[k].width_mm == drawn.pages[k].width_mm);
        CHECK(blank.pages[k].height_mm == drawn.pages[k].height_mm);
      }
    };
    for (std::size_t b = 0; b < made.patterns.size(); ++b) {
      check([&](PageFill fill) { return tiles_sheet(made, b, paper, labels, fill); });
      check([&](PageFill fill) { return fold_sheet(made, b, paper, labels, fill); });
      check([&](PageFill fill) { return template_sheets(made, b, paper, labels, fill); });
    }
    check([&](PageFill fill) { return test_page(made, paper, labels, fill); });
    check([&](PageFill fill) { return numeral_sheets(made, paper, labels, fill); });
    check([&](PageFill fill) { return placing_sheet(made, paper, labels, fill); });
    check([&](PageFill fill) { return view_sheet(made, paper, labels, fill); });
  }
}

TEST_CASE("told: a page past what a PDF may have") {
  Sheet large;
  large.pages = {{5080, 100, {}, ""}};
  CHECK_FALSE(told(large).too_large_for_pdf);  // ISO 32000-1, annex C.2: 14 400 units of 1/72 in
  large.pages.push_back({100, 5080.1, {}, ""});
  CHECK(told(large).too_large_for_pdf);
  large.pages = {{5079, 100, {}, "", {1.001, 1}}};  // as it is printed
  CHECK(told(large).too_large_for_pdf);
}

}  // namespace
}  // namespace swathe
