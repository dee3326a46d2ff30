#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/overlaps.hpp"
#include "swathe/write.hpp"

// What everyone asks of a printed page: that its words can be read. Every sheet of every example,
// and of the jobs that were drawn for the manifest.
namespace swathe {
namespace {

/// Ink keeps off the edge of its box by so much: boxes that only touch are apart on paper.
constexpr double kTouching = 0.3;  // mm

/// The least that tables are lettered in; all other text is larger.
constexpr double kLeastText = 2.5;

struct Lettered {
  const TextMark* text;
  TextBox box;
};

std::vector<Lettered> lettered(const Page& page, const Font& labels) {
  std::vector<Lettered> texts;
  for (const draw::Mark& mark : page.drawing.marks())
    if (const auto* text = std::get_if<TextMark>(&mark))
      if (!text->text.empty()) texts.push_back({text, box_of(*text, labels).grown(-kTouching)});
  return texts;
}

bool crosses(const LineMark& line, const TextBox& box) {
  std::vector<FlatPoint> points = flatten(line.path, 0.1);
  if (line.path.closed && !points.empty()) points.push_back(points.front());
  for (std::size_t k = 0; k + 1 < points.size(); ++k)
    if (crossed_by(box, points[k], points[k + 1])) return true;
  return false;
}

/// What cannot be read on a page, in words.
std::vector<std::string> unreadable(const Page& page, const Font& labels) {
  std::vector<std::string> faults;
  const std::vector<Lettered> texts = lettered(page, labels);
  const plane::Box paper{{0, 0}, {page.width_mm, page.height_mm}};
  for (std::size_t a = 0; a < texts.size(); ++a) {
    const std::string said = "\"" + texts[a].text->text + "\"";
    if (!paper.holds(bounds(texts[a].box))) faults.push_back(said + " runs off the page");
    if (texts[a].text->height_mm < kLeastText - 1e-9) faults.push_back(said + " is small");
    for (std::size_t b = a + 1; b < texts.size(); ++b)
      if (overlap(texts[a].box, texts[b].box))
        faults.push_back(said + " lies over \"" + texts[b].text->text + "\"");
  }
  for (const draw::Mark& mark : page.drawing.marks())
    if (const auto* line = std::get_if<LineMark>(&mark))
      for (const Lettered& one : texts)
        if (crosses(*line, one.box))
          faults.push_back("a line runs through \"" + one.text->text + "\"");
  return faults;
}

void check_legible(const std::filesystem::path& path, const Font& labels) {
  const auto made = test::make_text(test::bytes_of(path), path.filename().string());
  if (!made) return;
  const std::vector<Sheet> sheets = all_sheets(*made, labels);
  CHECK(!sheets.empty());
  for (const Sheet& sheet : sheets)
    for (std::size_t p = 0; p < sheet.pages.size(); ++p)
      for (const std::string& fault : unreadable(sheet.pages[p], labels))
        FAIL_CHECK(path.filename().string()
                   << ", " << sheet.stem << " page " << p + 1 << ": " << fault);
}

TEST_CASE("legible: no words of an example lie over others, on lines, or off the page") {
  const Font labels = test::label_font();
  for (const auto& path : test::example_jobs()) check_legible(path, labels);
}

TEST_CASE("legible: nor of drawn jobs") {
  const Font labels = test::label_font();
  std::vector<std::filesystem::path> jobs;
  for (const auto& entry : std::filesystem::directory_iterator(SWATHE_TEST_DATA "/manifest/jobs"))
    if (entry.path().filename().string().starts_with("drawn-")) jobs.push_back(entry.path());
  REQUIRE(jobs.size() >= 100);
  std::ranges::sort(jobs);
  for (const auto& path : jobs) check_legible(path, labels);
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
}

}  // namespace
}  // namespace swathe
