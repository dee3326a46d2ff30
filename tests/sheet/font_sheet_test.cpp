#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plane/clip.hpp"
#include "sheet/stroke_picture.hpp"
#include "support/fonts.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"
#include "swathe/sheet.hpp"

namespace swathe {
namespace {

std::vector<FontSpecimen> specimens() {
  std::vector<FontSpecimen> fonts;
  for (const BundledFont& bundled : bundled_fonts()) {
    auto line = set_digits(test::opened(bundled), "20486", 95.25);
    REQUIRE(line.has_value());
    FontSpecimen font{bundled.name, {"one line", "another line"}, *std::move(line), {}};
    for (const DigitOutline& shape : font.line.shapes)
      font.strokes.push_back(measure_stroke(shape.outline));
    fonts.push_back(std::move(font));
  }
  return fonts;
}

}  // namespace

TEST_CASE("font sheet: every font is on it, texts apart and on the page") {
  const Font labels = test::label_font();
  const Sheet sheet =
      font_sheet(specimens(), "Fonts", {"words"}, 12.7, PaperKeys{}, Units::Inches, labels);
  std::size_t named = 0;
  for (const Page& page : sheet.pages) {
    for (const std::string& fault : test::text_faults(page, labels)) FAIL_CHECK(fault);
    for (const TextMark& text : test::texts_of(page.drawing))
      named += static_cast<std::size_t>(
          std::ranges::count(bundled_fonts(), text.text, &BundledFont::name));
  }
  CHECK(named == bundled_fonts().size());
}

TEST_CASE("stroke picture: darker where narrower, and only where there is ink") {
  // A bar 10 wide, and one 20 wide beside it: with 12.7 asked the first is too narrow, the second
  // more than half as wide again.
  const plane::Region bars = {{{0, 0}, {10, 0}, {10, 100}, {0, 100}},
                              {{30, 0}, {50, 0}, {50, 100}, {30, 100}}};
  const type::Stroke stroke = measure_stroke(bars);
  Drawing drawing;
  draw_shaded(drawing, {bars, stroke}, 12.7, {0, 0}, 1);
  double dark = 0, pale = 0, last = 1;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* fill = std::get_if<FillMark>(&mark)) {
      plane::Region shaded;
      for (const plane::Path& path : fill->outlines) shaded.push_back(flatten(path, 0.01));
      shaded = unite(shaded);
      CHECK(fill->color.red == fill->color.blue);  // gray
      CHECK(fill->color.red < last);               // the narrowest last, over the others
      last = fill->color.red;
      CHECK(area(subtract(shaded, offset(bars, 0.05))) < 0.1);
      dark += fill->color.red < 0.4 ? area(shaded) : 0;
      pale += fill->color.red > 0.8 ? area(shaded) : 0;
    }
  // Discs swept along the middle line fill a bar but for the corners of its ends.
  const auto swept = [](double wide) {
    return wide * (100 - wide) + std::numbers::pi * wide * wide / 4;
  };
  CHECK(dark == doctest::Approx(swept(10)).epsilon(0.03));
  CHECK(pale == doctest::Approx(swept(20)).epsilon(0.03));
}

}  // namespace swathe
