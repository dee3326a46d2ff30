#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

#include "job/limits.hpp"
#include "sheet/same_cover_words.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/made_examples.hpp"
#include "swathe/sheet.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

Job on_paper(Job job, const char* name, double width_mm, double height_mm) {
  job.paper.sheet = name;
  job.paper.width = mm(width_mm);
  job.paper.height = mm(height_mm);
  return job;
}

std::vector<Made> all_made() {
  std::vector<Made> all;
  for (const auto& path : test::example_jobs()) all.push_back(test::made_example(path));
  const Job demo = test::demo_job();
  all.push_back(test::made_by_hand(on_paper(demo, kRoll.data(), 914.4, kPaperSize.most.mm())));
  all.push_back(test::made_by_hand(on_paper(demo, "own size", 279.4, 431.8)));
  all.push_back(test::made_by_hand(on_paper(demo, "own size", 100, 100)));
  all.push_back(test::made_by_hand(demo));
  all.back().job.paper.measured = {mm(99.2), mm(101.1)};
  return all;
}

std::vector<PrintFile> files_of(const PrintWays& ways) {
  std::vector<PrintFile> files = ways.first;
  const auto add = [&](const std::vector<PrintFile>& more) {
    files.insert(files.end(), more.begin(), more.end());
  };
  for (const PrintWay& way : ways.ways) add(way.files);
  add(ways.numerals);
  add(ways.to_look_at);
  return files;
}

TEST_CASE("ways (1): files, pages and sizes are those of the sheets themselves") {
  const Font labels = test::label_font();
  for (const Made& made : all_made()) {
    CAPTURE(made.job.source);
    CAPTURE(made.job.paper.sheet);
    std::map<std::string, Sheet> sheets;
    for (Sheet& sheet : all_sheets(made, labels)) {
      if (sheet.kind == SheetKind::Start || sheet.kind == SheetKind::Book) continue;
      sheets.emplace(sheet.stem + ".pdf", std::move(sheet));
    }
    std::set<std::string> told;
    for (const PrintFile& file : files_of(print_ways(made, labels))) {
      CAPTURE(file.name);
      CHECK(told.insert(file.name).second);
      REQUIRE(sheets.contains(file.name));
      const Sheet& sheet = sheets[file.name];
      CHECK(file.pages == sheet.pages.size());
      CHECK(file.paper == sheet.paper);
      const Page& page = sheet.pages.front();
      CHECK(file.width.mm() == doctest::Approx(page.width_mm * page.print.x));
      if (file.paper != kRoll)
        CHECK(file.height.mm() == doctest::Approx(page.height_mm * page.print.y));
    }
    // What is not told of is what a cover that shares a print has besides.
    for (const auto& [name, sheet] : sheets)
      if (!told.contains(name))
        CHECK((sheet.kind == SheetKind::Pattern || sheet.kind == SheetKind::Measures));
  }
}

TEST_CASE("ways (2): each cover is in every way, left out of it, or shares another's print") {
  const Font labels = test::label_font();
  for (const Made& made : all_made()) {
    CAPTURE(made.job.source);
    const PrintWays ways = print_ways(made, labels);
    CHECK(!ways.ways.empty());
    for (const PrintWay& way : ways.ways)
      for (std::size_t b = 0; b < made.patterns.size(); ++b) {
        const bool files =
            std::ranges::any_of(way.files, [&](const PrintFile& file) { return file.bumper == b; });
        const bool left_out = std::ranges::count(way.left_out, b) > 0;
        const bool shared = std::ranges::count(ways.shared, b, &SharedPrint::bumper) > 0;
        CHECK(int(files) + int(left_out) + int(shared) == 1);
        CHECK(shared == is_cut_from_another(made, b));
      }
  }
}

// The example's covers take 24 tiles each, and a measuring sheet with three pages of templates: the
// sheets that its list tells of.
TEST_CASE("ways: in words, in the job's units") {
  const Font labels = test::label_font();
  const auto words = [&](const Job& job, PrintWay::Kind kind) {
    const Made made = test::made_by_hand(job);
    const PrintWays ways = print_ways(made, labels);
    const auto way = std::ranges::find(ways.ways, kind, &PrintWay::kind);
    REQUIRE(way != ways.ways.end());
    return words_of(*way, made);
  };
  using Kind = PrintWay::Kind;
  const Job demo = test::demo_job();
  CHECK(words(demo, Kind::Measures).way == "measuring sheet and templates");
  CHECK(words(demo, Kind::Measures).files ==
        "A-measures.pdf, A-templates.pdf, B-measures.pdf, B-templates.pdf");
  CHECK(words(demo, Kind::Tiles).files == "A-tiles.pdf, B-tiles.pdf");
  CHECK(words(demo, Kind::Tiles).sheets.ends_with(" a cover"));
  CHECK(words(demo, Kind::Tiles).sheets.find("sheets of letter") != std::string::npos);
  // 279.4 by 431.8 mm are 11 by 17 in exactly.
  const Job own = on_paper(demo, "own size", 279.4, 431.8);
  CHECK(words(own, Kind::Tiles).sheets.find("sheets of 11 by 17 in") != std::string::npos);
  Job metric = own;
  metric.units = Units::Millimeters;
  CHECK(words(metric, Kind::Tiles).sheets.find("sheets of 279 by 432 mm") != std::string::npos);
  CHECK(words(demo, Kind::PrintShop).sheets.ends_with(" in"));
  CHECK(words(metric, Kind::PrintShop).sheets.ends_with(" mm"));
  const Job roll = on_paper(demo, kRoll.data(), 914.4, kPaperSize.most.mm());
  CHECK(words(roll, Kind::Tiles).sheets.find("off the roll") != std::string::npos);
}

TEST_CASE("ways: pages of one paper are counted together") {
  const PrintFile letter{"a.pdf", 0, 1, "letter", mm(215.9), mm(279.4)};
  PrintFile more = letter, large{"b.pdf", 0, 1, "full size", mm(2540), mm(508)};
  more.pages = 3;
  CHECK(sheets_words({letter}, Units::Inches) == "1 sheet of letter");
  CHECK(sheets_words({letter, more}, Units::Inches) == "4 sheets of letter");
  CHECK(sheets_words({letter, large, large}, Units::Inches) ==
        "1 sheet of letter, 2 pages of 100 by 20 in");  // 2540 / 25.4, 508 / 25.4
  large.paper = kRoll;
  CHECK(sheets_words({large}, Units::Inches) == "1 page off the roll");
}

}  // namespace
}  // namespace swathe
