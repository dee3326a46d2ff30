#include "numeral/size.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "support/fonts.hpp"
#include "type/debian_fonts.hpp"

namespace swathe {
namespace {

constexpr double kInch = 25.4;

SetNumber set_to(const Font& font, const std::string& number, double height_inches,
                 NumeralSpacing spacing = {}) {
  auto set = set_number(font, number, inches(height_inches), spacing);
  REQUIRE(set.has_value());
  return *std::move(set);
}

// Figures read from the file with fontTools 4.38 (DejaVu Sans Bold 2.37): em 2048, a flat digit is
// 1493 high, 0 runs from -29 to 1520, 1 from 231 to 1284 across, every advance is 1425.
TEST_CASE("size: a flat digit of DejaVu Sans Bold set 4 in high") {
  const std::string bytes = test::file_bytes(test::kDejaVu);
  const auto font = Font::open(bytes);
  REQUIRE(font.has_value());

  const SetNumber one = set_to(*font, "1", 4);
  CHECK(one.em / kInch == doctest::Approx(5.486939).epsilon(1e-6));  // 395.0596 pt
  CHECK(one.shapes.front().advance / kInch == doctest::Approx(3.817816).epsilon(1e-6));
  CHECK(one.ink.width() / kInch == doctest::Approx(4.0 * (1284 - 231) / 1493).epsilon(1e-6));

  // The shortest digit is measured: the 0 beside it stands 4.15 in high.
  const SetNumber ten = set_to(*font, "10", 4);
  CHECK(ten.em == doctest::Approx(one.em));
  CHECK(ten.height / kInch == doctest::Approx(4));
  CHECK(ten.shape('0').ink.height() / kInch == doctest::Approx(4.0 * 1549 / 1493).epsilon(1e-5));
  CHECK(ten.ink.lo.y / kInch == doctest::Approx(-4.0 * 29 / 1493).epsilon(1e-4));
  REQUIRE(ten.digits.size() == 2);
  CHECK(ten.digits[0].digit == '1');
  CHECK(ten.digits[1].origin.x == doctest::Approx(ten.shape('1').advance));
  // Ink to ink: the 1 ends at 1284 of its 1425, the 0 starts at 98.
  CHECK(ten.largest_space / kInch ==
        doctest::Approx(4.0 * (1425 - 1284 + 98) / 1493).epsilon(1e-4));
}

// Five digits ink to ink, without kerning, all ten set so that the shortest is 4 in: of the digit
// with the greatest advance, and of digits of mean width. Measured by another program on a raster
// of 400 px/in and given to 0.01 in.
TEST_CASE("size: five digits are as wide as measured on a raster") {
  const struct {
    const char* name;
    double widest, mean;
  } expected[] = {{"Anton", 11.32, 10.93},
                  {"Saira 50 750", 9.91, 9.19},
                  {"Saira", 11.28, 10.51},
                  {"OSP-DIN", 10.13, 9.95},
                  {"Bebas Neue", 10.96, 10.90},
                  {"Sofia Sans Extra Condensed", 13.72, 12.68},
                  {"Staatliches", 13.91, 11.94},
                  {"Big Shoulders Stencil", 13.08, 11.67},
                  {"Saira Stencil One", 19.10, 17.36}};
  for (const auto& row : expected) {
    CAPTURE(std::string(row.name));
    const Font font = test::opened(test::numeral_font(row.name));
    std::vector<SetNumber> digits;
    double em = 0;  // the shortest digit needs the largest em
    for (char digit = '0'; digit <= '9'; ++digit) {
      digits.push_back(set_to(font, std::string(1, digit), 4));
      em = std::max(em, digits.back().em);
    }
    double widest_advance = 0, widest = 0, sum = 0;
    for (const SetNumber& digit : digits) {
      const double enlarged = em / digit.em / kInch;
      const double advance = enlarged * digit.shapes.front().advance;
      const double five = 4 * advance + enlarged * digit.ink.width();
      sum += five;
      if (advance <= widest_advance + 1e-6) continue;
      widest_advance = advance;
      widest = five;
    }
    CHECK(std::abs(widest - row.widest) < 0.01);
    CHECK(std::abs(sum / 10 - row.mean) < 0.01);
  }
}

TEST_CASE("size (1): no digit is shorter than asked, and one is exactly so") {
  for (const BundledFont& bundled : test::numeral_fonts()) {
    CAPTURE(bundled.name);
    const SetNumber set = set_to(test::opened(bundled), "20486", 4);
    double least = 1e9;
    for (const DigitOutline& shape : set.shapes) least = std::min(least, shape.ink.height());
    CHECK(least == doctest::Approx(101.6).epsilon(1e-9));
    CHECK(set.shapes.size() == 5);
    CHECK(set.digits.size() == 5);
  }
}

TEST_CASE("size (2): another height is the same as setting anew") {
  const Font font = test::opened(test::numeral_font("Anton"));
  const NumeralSpacing spacing{.tabular = false, .extra = mm(3)};
  const SetNumber at_once = set_to(font, "1138", 3.75, spacing);
  const SetNumber by_way = at_height(set_to(font, "1138", 4.5, spacing), inches(3.75), spacing);
  CHECK(by_way.ink.width() == doctest::Approx(at_once.ink.width()));
  CHECK(by_way.ink.height() == doctest::Approx(at_once.ink.height()));
  CHECK(by_way.largest_space == doctest::Approx(at_once.largest_space));
  CHECK(by_way.em == doctest::Approx(at_once.em));
}

TEST_CASE("size: extra space widens the number between its digits only") {
  const Font font = test::opened(test::numeral_font("Anton"));
  const double plain = set_to(font, "1138", 4).ink.width();
  const double spread = set_to(font, "1138", 4, {.tabular = false, .extra = mm(5)}).ink.width();
  CHECK(spread - plain == doctest::Approx(15));
}

TEST_CASE("size: refusals") {
  const Font font = test::opened(test::numeral_font("Anton"));
  const auto why = [&](const std::string& number, Length height, Length extra = {}) {
    const auto set = set_number(font, number, height, {.tabular = false, .extra = extra});
    REQUIRE_FALSE(set.has_value());
    return set.error().front().why;
  };
  CHECK(why("", inches(4)) == Why::OutOfRange);
  CHECK(why("123456", inches(4)) == Why::OutOfRange);
  CHECK(why("12A", inches(4)) == Why::OutOfRange);
  CHECK(why("12", Length{}) == Why::OutOfRange);
  CHECK(why("12", -inches(4)) == Why::OutOfRange);
  CHECK(why("88", inches(4), -inches(1)) == Why::DoesNotFit);
}

}  // namespace
}  // namespace swathe
