#include "numeral/make_legal.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "base/embedded.hpp"
#include "numeral/stencil.hpp"
#include "plane/clip.hpp"
#include "support/fonts.hpp"
#include "swathe/type.hpp"

namespace swathe {
namespace {

constexpr double kStroke = 12.7;  // 1/2 in

NumeralKeys without_bridges() {
  NumeralKeys keys;
  keys.method = NumeralMethod::IronOn;
  return keys;
}

/// A nought of straight strokes `stroke` wide, drawn by hand, `width` by 100 mm.
SetNumber square_nought(double width, double stroke) {
  SetNumber number;
  number.text = "0";
  number.em = 100;
  DigitOutline nought;
  nought.digit = '0';
  nought.outline = {{{0, 0}, {width, 0}, {width, 100}, {0, 100}},
                    {{stroke, stroke},
                     {stroke, 100 - stroke},
                     {width - stroke, 100 - stroke},
                     {width - stroke, stroke}}};
  nought.ink = bounds(nought.outline);
  nought.advance = width;
  number.shapes = {nought};
  number.digits = {{'0', {0, 0}}};
  measure_line(number);
  return number;
}

/// Whether the rule is met, measured anew.
bool legal(const SetNumber& number, const NumeralKeys& keys) {
  return std::all_of(number.shapes.begin(), number.shapes.end(), [&](const DigitOutline& shape) {
    type::Stroke stroke = measure_stroke(shape.outline);
    if (keys.method == NumeralMethod::Stencil) {
      const auto stencil = make_stencil(shape.outline, keys.bridge.mm());
      REQUIRE(stencil.has_value());
      stroke = less_bridges(stroke, stencil->bridges);
    }
    return stroke.share_at_least(kStroke) > 0.5;
  });
}

TEST_CASE("make_legal: outlines moved outwards keep the height and widen the stroke") {
  const SetNumber heavy = heavier(square_nought(60, 10), mm(2), {});
  CHECK(heavy.height == doctest::Approx(100));
  const plane::Region& nought = heavy.shape('0').outline;
  REQUIRE(nought.size() == 2);
  // Set 96 mm high the stroke is 9.6 wide; 2 mm on either side make it 13.6.
  const plane::Box outer = bounds(nought[0]), inner = bounds(nought[1]);
  CHECK(outer.width() == doctest::Approx(60 * 0.96 + 4).epsilon(1e-4));
  CHECK(inner.lo.x - outer.lo.x == doctest::Approx(13.6).epsilon(1e-3));
  CHECK(inner.lo.y - outer.lo.y == doctest::Approx(13.6).epsilon(1e-3));
}

// Worked by hand: a stroke of 10 mm, h = 100, moved out by x: 10 (100 - 2x) / 100 + 2x >= 12.6 from
// x = 1.444; at 1.5 the number is 60 x 0.97 + 3 = 61.2 wide. Taller: 126 high and 75.6 wide.
TEST_CASE("make_legal (2): heavier where that is narrower, to 0.1 mm") {
  const auto legal_number =
      make_legal(square_nought(60, 10), without_bridges(), mm(12.6), Units::Millimeters);
  REQUIRE(legal_number.has_value());
  CHECK(legal_number->moved_out.mm() == doctest::Approx(1.5));
  CHECK(legal_number->number.height == doctest::Approx(100));
  CHECK(legal_number->number.ink.width() == doctest::Approx(61.2).epsilon(1e-4));
  CHECK(legal_number->change == "edges moved 1.5 mm outwards at the same height");
}

// The counter is 4 mm wide: moved out by 1.5 it would be 4 x 0.97 - 3 = 0.88 mm.
TEST_CASE("make_legal (3): taller where a counter would close") {
  const auto legal_number =
      make_legal(square_nought(24, 10), without_bridges(), mm(12.6), Units::Millimeters);
  REQUIRE(legal_number.has_value());
  CHECK(legal_number->moved_out == Length{});
  CHECK(legal_number->number.height == doctest::Approx(126));
  CHECK(legal_number->number.ink.width() == doctest::Approx(24 * 1.26));
  CHECK(legal_number->change == "set 126 mm high instead of 100 mm");
}

TEST_CASE("make_legal (1): a legal number is left alone") {
  const auto set =
      set_number(test::opened(test::numeral_font("Anton")), "20486", inches(3.875), {});
  REQUIRE(set.has_value());
  const auto same = make_legal(*set, {}, mm(kStroke), Units::Inches);
  REQUIRE(same.has_value());
  CHECK(same->change.empty());
  CHECK(same->number.height == set->height);
  CHECK(same->number.ink.width() == set->ink.width());
}

TEST_CASE("make_legal: refuses what no change mends") {
  // Twice the height gives 4 mm; outlines moved 5.5 mm out would close the counter of 8 mm.
  const auto refused =
      make_legal(square_nought(12, 2), without_bridges(), mm(kStroke), Units::Inches);
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error().front().why == Why::DoesNotFit);
  CHECK(refused.error().front().sentence.find("1/2 in") != std::string::npos);
}

TEST_CASE("make_legal (2), (3): a light font becomes legal and stays open") {
  // The font of the labels, has strokes of some 0.46 in at 4 in.
  const auto font = Font::open(label_font());
  REQUIRE(font.has_value());
  for (NumeralMethod method : {NumeralMethod::IronOn, NumeralMethod::Stencil}) {
    NumeralKeys keys;
    keys.method = method;
    const auto set = set_number(*font, "2048", inches(3.875), {});
    REQUIRE(set.has_value());
    REQUIRE_FALSE(legal(*set, keys));
    const auto made = make_legal(*set, keys, mm(kStroke), Units::Inches);
    REQUIRE(made.has_value());
    CAPTURE(made->change);
    CHECK(legal(made->number, keys));
    CHECK(made->number.height >= set->height - 0.01);
    REQUIRE(made->moved_out > Length{});
    CHECK_FALSE(legal(heavier(*set, made->moved_out - mm(0.1), {}), keys));
    for (const DigitOutline& shape : made->number.shapes) {
      CAPTURE(shape.digit);
      CHECK(shape.counters() == set->shape(shape.digit).counters());
      // A disc of 3 mm still goes into every counter.
      for (const plane::Polygon& contour : shape.outline) {
        if (area(contour) > 0) continue;
        plane::Polygon counter(contour.rbegin(), contour.rend());
        CHECK_FALSE(plane::offset({counter}, -1.49).empty());
      }
    }
  }
}

}  // namespace
}  // namespace swathe
