#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "draw/furniture.hpp"
#include "support/drawn_number.hpp"
#include "support/examples.hpp"
#include "support/fullness.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/overlaps.hpp"
#include "swathe/write.hpp"

// What everyone asks of a printed page: that its words can be read, and that there is something on
// it. Every sheet of every example, of the jobs that were drawn for the manifest, and of new ones.
namespace swathe {
namespace {

/// Ink keeps off the edge of its box by so much: boxes that only touch are apart on paper.
constexpr double kTouching = 0.3;  // mm

/// The least that tables are lettered in; all other text is larger.
constexpr double kLeastText = 2.5;

/// No page is emptier, but a sheet's only one. Larger paper is taken for patterns, and what fills
/// an office's sheet is lost on it: asked of paper up to legal size (ANSI and ISO 216: 216 by 356
/// mm).
constexpr double kLeastFull = 0.1;
constexpr double kOfficePaper = 360.0;  // mm

/// Tiles that no place of as few tiles avoids: every place, 4 mm apart, has one such.
const std::vector<std::string> kNotAvoided = {"split-number.toml, B-tiles page 11: only 7 % full"};

/// Whether a sheet of a drawn job may have such a page. Where a place of its tiles has none nearly
/// empty, it is found (tile_search_test.cpp), but there need not be one; and the last of its many
/// views may stand alone.
bool may_be_thin(const Sheet& sheet) {
  return sheet.kind == SheetKind::Tiles || sheet.kind == SheetKind::Fold ||
         sheet.kind == SheetKind::Placing || sheet.kind == SheetKind::Views;
}

/// What cannot be read on a page, in words.
std::vector<std::string> unreadable(const Page& page, const Font& labels) {
  std::vector<std::string> faults = test::text_faults(page, labels, kTouching);
  const std::vector<std::string> lined = test::lines_through_text(page, labels, kTouching);
  faults.insert(faults.end(), lined.begin(), lined.end());
  for (const TextMark& text : test::texts_of(page.drawing)) {
    const std::string said = "\"" + text.text + "\"";
    if (text.height_mm < kLeastText - 1e-9) faults.push_back(said + " is small");
    if (text.text.ends_with("...") || text.text.ends_with("\u2026"))
      faults.push_back(said + " is cut short");
  }
  return faults;
}

/// What cannot be read on a sheet's pages, and which of them are nearly empty.
std::vector<std::string> faults_of(const Sheet& sheet, double margin_mm, const Font& labels) {
  std::vector<std::string> faults;
  const test::Fullness fullness(sheet, margin_mm, labels);
  for (std::size_t p = 0; p < sheet.pages.size(); ++p) {
    const std::string page = sheet.stem + " page " + std::to_string(p + 1) + ": ";
    for (const std::string& fault : unreadable(sheet.pages[p], labels))
      faults.push_back(page + fault);
    const bool office = std::max(sheet.pages[p].width_mm, sheet.pages[p].height_mm) < kOfficePaper;
    if (office && sheet.pages.size() > 1 && fullness.of(p) < kLeastFull)
      faults.push_back(page + "only " + std::to_string(std::lround(100 * fullness.of(p))) +
                       " % full");
  }
  return faults;
}

/// False where the job is refused.
bool check_legible(const std::string& text, const std::string& name, const Font& labels) {
  const auto made = test::make_text(text, name);
  if (!made) return false;
  const std::vector<Sheet> sheets = all_sheets(*made, labels);
  CHECK(!sheets.empty());
  for (const Sheet& sheet : sheets)
    for (const std::string& fault : faults_of(sheet, made->job.paper.margin.mm(), labels)) {
      const std::string said = name + ", " + fault;
      const bool of_a_drawn_one =
          name.starts_with("drawn") && may_be_thin(sheet) && fault.ends_with(" % full");
      if (!of_a_drawn_one && std::ranges::count(kNotAvoided, said) == 0) FAIL_CHECK(said);
    }
  return true;
}

void check_legible(const std::filesystem::path& path, const Font& labels) {
  check_legible(test::bytes_of(path), path.filename().string(), labels);
}

TEST_CASE("legible: no words of an example lie over others, on lines, or off the page") {
  const Font labels = test::label_font();
  for (const auto& path : test::example_jobs()) check_legible(path, labels);
}

void check_drawn_ones(const char* folder, std::size_t least) {
  const Font labels = test::label_font();
  std::vector<std::filesystem::path> jobs;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().filename().string().starts_with("drawn-")) jobs.push_back(entry.path());
  REQUIRE(jobs.size() >= least);
  std::ranges::sort(jobs);
  for (const auto& path : jobs) check_legible(path, labels);
}

TEST_CASE("legible: nor of drawn jobs") {
  check_drawn_ones(SWATHE_TEST_DATA "/manifest/jobs", 100);
}

// Each had a page like that once, which its name tells of.
TEST_CASE("legible: nor of drawn jobs on which it once failed") {
  check_drawn_ones(SWATHE_TEST_DATA "/write/jobs", 9);
}

// For long runs: only where SWATHE_DRAWN says how many.
TEST_CASE("legible: nor of jobs drawn anew" * doctest::skip(!std::getenv("SWATHE_DRAWN"))) {
  const Font labels = test::label_font();
  test::for_drawn_cases("legible", 1, [&](auto& rng) {
    // Some drawn jobs are refused.
    for (bool made = false; !made;) {
      const std::string text = job_text(test::drawn_number(rng));
      CAPTURE(text);
      made = check_legible(text, "drawn.toml", labels);
    }
  });
}

TEST_CASE("legible: the check sees each fault") {
  const Font labels = test::label_font();
  Page page{100, 100, {}, "", {}};
  page.drawing.text({10, 10}, "two");
  CHECK(unreadable(page, labels).empty());
  Page over = page;
  over.drawing.text({11, 11}, "words");
  CHECK(unreadable(over, labels).size() == 1);
  Page off = page;
  off.drawing.text({97, 50}, "far out");
  CHECK(unreadable(off, labels).size() == 1);
  Page lined = page;
  lined.drawing.line(LineKind::Thin, {0, 12}, {100, 12});
  CHECK(unreadable(lined, labels).size() == 1);
  Page small = page;
  small.drawing.text({50, 50}, "small", 1.5);
  CHECK(unreadable(small, labels).size() == 1);
  Page cut_short = page;
  cut_short.drawing.text({50, 50}, "half, on the fo...");
  CHECK(unreadable(cut_short, labels).size() == 1);
}

TEST_CASE("legible: the check sees pages that are nearly empty") {
  const Font labels = test::label_font();
  // 100 by 100 mm inside margins of 10 mm.
  const auto page = [](double to) {
    Page one{120, 120, {}, "", {}};
    one.drawing.text({12, 105}, "title");  // alike on both: their head
    one.drawing.line(LineKind::Cut, plane::rectangle({10, 10}, {110, to}));
    return one;
  };
  Sheet sheet;
  sheet.pages = {page(89), page(19)};  // 16 strips across, and 2
  {
    const test::Fullness full(sheet, 10, labels);
    CHECK(full.of(0) == doctest::Approx(0.8));
    CHECK(full.of(1) == doctest::Approx(0.1));
  }
  CHECK(faults_of(sheet, 10, labels).empty());
  sheet.pages[1] = page(14);  // 1 strip
  CHECK(faults_of(sheet, 10, labels).size() == 1);
  draw_line_key(sheet.pages[1].drawing, labels, {15, 60}, {LineKind::Cut, LineKind::Fold});
  CHECK(faults_of(sheet, 10, labels).size() == 1);  // a key fills no page
  sheet.pages.erase(sheet.pages.begin());
  CHECK(faults_of(sheet, 10, labels).empty());  // the only one
}

}  // namespace
}  // namespace swathe
