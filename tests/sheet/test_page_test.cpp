#include "sheet/test_page.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "draw/text_box.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"
#include "tile/correction.hpp"

namespace swathe {
namespace {

Made made_on(double width_mm, double height_mm) {
  Job job = test::demo_job();
  job.paper.sheet = "own size";
  job.paper.width = mm(width_mm);
  job.paper.height = mm(height_mm);
  return test::made_by_hand(job);
}

/// The long lines of the scales as they come out of a printer that does nothing wrong.
std::vector<FlatPoint> scales_of(const Page& page) {
  std::vector<FlatPoint> scales;
  for (const draw::Mark& mark : page.drawing.marks()) {
    const auto* line = std::get_if<LineMark>(&mark);
    if (!line || line->kind != LineKind::Scale || length(line->path) < 50) continue;
    const plane::Box box = bounds(line->path);
    scales.push_back({box.width() * page.print.x, box.height() * page.print.y});
  }
  return scales;
}

TEST_CASE("test page: two scales of 100 mm, one each way, and what to do with the answer") {
  for (const auto& [wide, high] : {std::pair{215.9, 279.4}, {210.0, 297.0}, {145.4, 225.4}}) {
    const Made made = made_on(wide, high);
    const Sheet sheet = test_page(made, made.job.paper, test::label_font());
    CHECK(sheet.stem == "test-page");
    REQUIRE(sheet.pages.size() == 1);
    const Page& page = sheet.pages.front();
    const std::vector<FlatPoint> scales = scales_of(page);
    REQUIRE(scales.size() == 2);
    CHECK(scales[0].x == doctest::Approx(100));
    CHECK(scales[0].y == doctest::Approx(0));
    CHECK(scales[1].x == doctest::Approx(0));
    CHECK(scales[1].y == doctest::Approx(100));
    for (const char* words : {"What do the 100 mm scales measure", "across: ____", "down: ____",
                              "[paper]", "measured = [\"", "actual size"})
      CHECK_MESSAGE(test::says(page.drawing, words), std::string(words));
    for (const std::string& fault : test::text_faults(page, test::label_font())) FAIL_CHECK(fault);
    // Its letters may stand over the capitals' height, which is kept to the margin of 12.7 mm.
    const plane::Box inside = plane::Box{{0, 0}, {wide, high}}.grown(-12.7 + 1.0);
    for (const TextMark& text : test::texts_of(page.drawing))
      CHECK_MESSAGE(inside.holds(bounds(box_of(text, test::label_font()))), text.text);
  }
}

TEST_CASE("test page: what is typed makes the next print's scales come out right") {
  Job job = test::demo_job();
  job.paper.measured = {mm(99.2), mm(101.1)};
  const Made made = test::made_by_hand(job);
  const Font labels = test::label_font();
  const std::vector<ListedSheet> list = list_sheets(made, labels);
  REQUIRE(list[1].kind == SheetKind::TestPage);
  const Page page = make_sheet(made, list[1], labels).pages.front();
  const std::vector<FlatPoint> scales = scales_of(page);
  REQUIRE(scales.size() == 2);
  // That printer makes 99.2 mm of 100 mm across, and 101.1 mm down.
  CHECK(scales[0].x * 0.992 == doctest::Approx(100));
  CHECK(scales[1].y * 1.011 == doctest::Approx(100));
  CHECK(test::says(page.drawing, "paper.measured"));
}

TEST_CASE("test page: none where no scale fits") {
  const Made made = made_on(100, 400);
  CHECK(test_page(made, made.job.paper, test::label_font()).pages.empty());
  CHECK_FALSE(test_page_name(made.job.paper));
}

}  // namespace
}  // namespace swathe
