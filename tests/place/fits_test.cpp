#include <doctest/doctest.h>

#include "numeral/digit.hpp"
#include "numeral/size.hpp"
#include "support/fonts.hpp"

namespace swathe {
namespace {

// Season 2026, R412: digits at least 3 3/4 in high, the majority of the stroke at least 1/2 in;
// set an eighth higher, as the program sets them.
TEST_CASE(
    "numerals: any five digits fit a stretch of 14 in, legal, in two bundled fonts and more") {
  const Length stretch = inches(14), height = inches(3.75 + 0.125), stroke = inches(0.5);
  int fonts = 0;
  for (const BundledFont& bundled : bundled_fonts()) {
    const Font font = test::opened(bundled);
    bool fits = true, legal = true;
    for (char digit = '0'; digit <= '9'; ++digit) {
      // No number of five digits is wider than the widest digit five times, kerning apart; the
      // bridges of a stencil are taken off the stroke.
      const auto five = set_number(font, std::string(5, digit), height, {});
      REQUIRE(five.has_value());
      fits = fits && five->ink.width() + 2 * 6.35 <= stretch.mm();
      legal = legal && five->height >= inches(3.75).mm() && keeps_stroke(*five, {}, stroke);
    }
    for (const char* number : {"20486", "88888", "40404", "96969", "17171", "74747"}) {
      const auto set = set_number(font, number, height, {});
      REQUIRE(set.has_value());
      if (fits) CHECK(set->ink.width() + 2 * 6.35 <= stretch.mm());
    }
    if (fits && legal) ++fonts;
  }
  CHECK(fonts >= 2);
}

}  // namespace
}  // namespace swathe
