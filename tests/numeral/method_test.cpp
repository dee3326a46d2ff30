#include "numeral/method.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "numeral/size.hpp"
#include "numeral/stencil.hpp"
#include "plane/clip.hpp"
#include "support/fonts.hpp"

namespace swathe {
namespace {

Digit digit_of(char digit) {
  const auto set =
      set_number(test::opened(test::numeral_font("Anton")), std::string(1, digit), inches(4), {});
  REQUIRE(set.has_value());
  Digit made;
  made.digit = digit;
  made.outline = set->shapes.front().outline;
  const auto stencil = make_stencil(made.outline, 6.35);
  REQUIRE(stencil.has_value());
  made.stencil = stencil->cut;
  return made;
}

double from_segment(FlatPoint p, FlatPoint a, FlatPoint b) {
  const FlatPoint along = b - a;
  const double t = std::clamp(dot(p - a, along) / dot(along, along), 0.0, 1.0);
  return apart(p, a + t * along);
}

double from_outline(FlatPoint p, const plane::Region& region) {
  double nearest = std::numeric_limits<double>::infinity();
  for (const plane::Polygon& contour : region) {
    for (std::size_t i = 0; i < contour.size(); ++i) {
      nearest = std::min(nearest, from_segment(p, contour[i], contour[(i + 1) % contour.size()]));
    }
  }
  return nearest;
}

/// Area that belongs to one of them and not to the other.
double difference(const plane::Region& a, const plane::Region& b) {
  return area(subtract(a, b)) + area(subtract(b, a));
}

TEST_CASE("method (1): stencils and masks are cut with their bridges") {
  const Digit eight = digit_of('8');
  for (NumeralMethod method : {NumeralMethod::Stencil, NumeralMethod::PaintMask}) {
    const DigitLines lines = digit_lines(eight, method);
    CHECK(difference(lines.cut, eight.stencil) < 0.01);
    CHECK(lines.stitch.empty());
    CHECK_FALSE(lines.mirrored);
  }
}

TEST_CASE("method (2): film for ironing on is cut mirrored") {
  const Digit four = digit_of('4');
  const DigitLines lines = digit_lines(four, NumeralMethod::IronOn);
  CHECK(lines.mirrored);
  const plane::Box before = bounds(four.outline), after = bounds(lines.cut);
  CHECK(after.lo.x == doctest::Approx(before.lo.x));
  CHECK(after.hi.x == doctest::Approx(before.hi.x));
  CHECK(area(lines.cut) == doctest::Approx(area(four.outline)));
  CHECK(difference(lines.cut, four.outline) > 100);  // a 4 is not its own mirror image
  Digit again = four;
  again.outline = lines.cut;
  CHECK(difference(digit_lines(again, NumeralMethod::IronOn).cut, four.outline) < 0.1);
  // A nought nearly is.
  const Digit nought = digit_of('0');
  CHECK(difference(digit_lines(nought, NumeralMethod::IronOn).cut, nought.outline) <
        0.01 * area(nought.outline));
}

TEST_CASE("method (3): cloth sewn on has its allowance outside the stitch line everywhere") {
  for (char digit : {'0', '1', '4', '7', '8'}) {
    CAPTURE(digit);
    const Digit made = digit_of(digit);
    const DigitLines lines = digit_lines(made, NumeralMethod::SewOn);
    CHECK(difference(lines.stitch, made.outline) < 0.01);
    REQUIRE_FALSE(lines.cut.empty());
    for (const plane::Polygon& contour : lines.cut) {
      for (FlatPoint p : contour) {
        CHECK(from_outline(p, made.outline) == doctest::Approx(6.35).epsilon(0.002));
      }
    }
  }
}

TEST_CASE("method: a mask holds the whole number, digit by digit, about its center") {
  const std::vector<Digit> digits = {digit_of('4'), digit_of('8')};
  PlacedNumeral placed;
  placed.text = "848";
  placed.center_s = 500;
  placed.digits = {{'8', {440, -50}}, {'4', {500, -50}}, {'8', {560, -50}}};
  const plane::Region mask = number_mask(placed, digits);
  CHECK(area(mask) == doctest::Approx(2 * area(digits[1].stencil) + area(digits[0].stencil)));
  const plane::Box first = bounds(digits[1].stencil), all = bounds(mask);
  CHECK(all.lo.x == doctest::Approx(first.lo.x - 60));
  CHECK(all.hi.x == doctest::Approx(first.hi.x + 60));
  CHECK(all.lo.y == doctest::Approx(std::min(first.lo.y, bounds(digits[0].stencil).lo.y) - 50));
  // One sheet still: nothing falls out of it.
  const plane::Box around = all.grown(20);
  const plane::Region sheet = subtract(
      {{around.lo, {around.hi.x, around.lo.y}, around.hi, {around.lo.x, around.hi.y}}}, mask);
  CHECK(std::count_if(sheet.begin(), sheet.end(),
                      [](const plane::Polygon& p) { return area(p) > 0; }) == 1);
}

}  // namespace
}  // namespace swathe
