#include "place/make_numerals.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "support/fonts.hpp"
#include "support/jobs.hpp"

namespace swathe {
namespace {

constexpr double kInch = 25.4;
const NumeralRules k2026 = {inches(3.75), inches(0.5), 3, true, inches(4)};

/// A job with all that its numerals are made from.
struct Maker {
  Job job = test::c_halves(28 * kInch, 30 * kInch);
  NumeralRules rules = k2026;
  int colors = 2;

  Outcome<Numerals> make(const std::string& number) const {
    const std::vector<Wrap> wraps = test::wraps_of(job);
    const Font font = test::opened(test::numeral_font("Anton"));
    return make_numerals({.font = font,
                          .font_name = "Anton",
                          .number = number,
                          .keys = job.numerals,
                          .wraps = wraps,
                          .rules = rules,
                          .colors = colors,
                          .candidates = {},
                          .units = job.units,
                          .places = job.places,
                          .sight = job.sight,
                          .demand = {}});
  }
};

Numerals made(const Maker& maker, const std::string& number) {
  auto numerals = maker.make(number);
  REQUIRE(numerals.has_value());
  return *std::move(numerals);
}

const Digit& digit_of(const Numerals& numerals, char digit) {
  const auto found = std::find_if(numerals.digits.begin(), numerals.digits.end(),
                                  [&](const Digit& d) { return d.digit == digit; });
  REQUIRE(found != numerals.digits.end());
  return *found;
}

TEST_CASE("numerals: height is the job's, else the season's least and 1/8 in, else 4 in") {
  NumeralKeys keys;
  CHECK(numeral_height(keys, k2026).inches() == doctest::Approx(3.875));
  CHECK(numeral_height(keys, {}).inches() == doctest::Approx(4));
  keys.height = inches(5);
  CHECK(numeral_height(keys, k2026).inches() == doctest::Approx(5));
}

TEST_CASE("numerals: counts are places and spares, times the colors, times the digit's share") {
  Maker maker;
  maker.job.numerals.spares = 1;
  const Numerals numerals = made(maker, "1138");
  REQUIRE(numerals.placed.size() == 3);
  REQUIRE(numerals.digits.size() == 3);
  CHECK(digit_of(numerals, '1').count == 16);  // 2 in the number x (3 places + 1 spare) x 2 colors
  CHECK(digit_of(numerals, '3').count == 8);
  CHECK(digit_of(numerals, '8').count == 8);
  CHECK(std::is_sorted(numerals.digits.begin(), numerals.digits.end(),
                       [](auto& p, auto& q) { return p.digit < q.digit; }));
}

TEST_CASE("numerals: measured, bridged and placed with the job's defaults") {
  const Numerals numerals = made({}, "20486");
  CHECK(numerals.font == "Anton");
  CHECK(numerals.height == doctest::Approx(3.875 * kInch));
  CHECK(numerals.misfits.empty());
  for (const PlacedNumeral& placed : numerals.placed) {
    CHECK(placed.width == doctest::Approx(numerals.width));
  }
  double shortest = 1e9;
  for (const Digit& digit : numerals.digits) {
    CAPTURE(digit.digit);
    shortest = std::min(shortest, digit.height);
    // Islands of these figures: 0 4 6 have one, 8 has two, 2 has none.
    const int islands = digit.digit == '8' ? 2 : (digit.digit == '2' ? 0 : 1);
    CHECK(digit.counters == islands);
    CHECK(digit.bridges.size() == static_cast<std::size_t>(islands == 0 ? 0 : islands + 1));
    CHECK(area(digit.stencil) <= area(digit.outline) + 1e-6);
    // Bridges take length away, and never so much that the majority is lost in this font.
    const double before = digit.stroke.share_at_least(12.7);
    const double after = digit.stroke_after_bridges.share_at_least(12.7);
    CHECK((islands == 0 ? after == before : after < before));
    CHECK(after > 0.5);
    CHECK(digit.stroke_after_bridges.length() == doctest::Approx(digit.stroke.length()));
  }
  CHECK(shortest == doctest::Approx(numerals.height));
}

TEST_CASE("numerals: ironed and sewn digits need no bridges, painted ones do") {
  Maker maker;
  for (NumeralMethod method : {NumeralMethod::IronOn, NumeralMethod::SewOn}) {
    maker.job.numerals.method = method;
    const Digit eight = digit_of(made(maker, "8"), '8');
    CHECK(eight.counters == 2);
    CHECK(eight.bridges.empty());
    CHECK(area(eight.stencil) == doctest::Approx(area(eight.outline)));
  }
  maker.job.numerals.method = NumeralMethod::PaintMask;
  CHECK(digit_of(made(maker, "8"), '8').bridges.size() == 3);
}

TEST_CASE("numerals: made legal on request, and only then") {
  Maker maker;
  maker.rules.stroke = mm(21);  // more than the default font has at this height
  const Numerals plain = made(maker, "1138");
  CHECK(plain.change.empty());
  CHECK(digit_of(plain, '3').stroke_after_bridges.share_at_least(21) < 0.5);

  maker.job.numerals.make_legal = true;
  const Numerals legal = made(maker, "1138");
  CHECK_FALSE(legal.change.empty());
  CHECK(legal.height >= plain.height - 0.01);
  for (const Digit& digit : legal.digits) {
    CHECK(digit.stroke_after_bridges.share_at_least(21) > 0.5);
  }
  for (const PlacedNumeral& placed : legal.placed) {
    CHECK(placed.width == doctest::Approx(legal.width));
  }

  maker.rules.stroke = mm(60);
  maker.job.places.set("numerals.make_legal", {"job.toml", 15, 14});
  const auto refused = maker.make("1138");
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error().front().why == Why::DoesNotFit);
  CHECK(refused.error().front().place.line == 15);
}

TEST_CASE("numerals: refusals stand at their keys") {
  Maker maker;
  Places& places = maker.job.places;
  places.set("job.number", {"job.toml", 2, 10});
  places.set("numerals.bridge", {"job.toml", 12, 10});
  places.set("numerals.height", {"job.toml", 13, 10});
  places.set("numerals.outline", {"job.toml", 14, 11});
  places.set("numerals.spacing", {"job.toml", 16, 11});

  const auto refusals = [&](const std::string& number) {
    const auto numerals = maker.make(number);
    REQUIRE_FALSE(numerals.has_value());
    return numerals.error();
  };
  CHECK(refusals("12 34").front().place.line == 2);
  CHECK(refusals("").front().place.line == 2);

  maker.job.numerals.height = Length{};
  CHECK(refusals("1138").front().place.line == 13);
  maker.job.numerals.height.reset();

  maker.job.numerals.spacing.extra = -inches(1);
  CHECK(refusals("1138").front().place.line == 16);
  maker.job.numerals.spacing.extra = Length{};

  // Every fault in one go: a bridge too wide for three digits, and white outlines that meet.
  maker.job.numerals.bridge = inches(2);
  maker.job.numerals.outline = mm(3);
  const Refusals many = refusals("806");
  REQUIRE(many.size() == 4);
  CHECK(many[0].why == Why::DoesNotFit);
  CHECK(many[0].place.line == 14);
  for (std::size_t i = 1; i < many.size(); ++i) {
    CHECK(many[i].why == Why::DoesNotFit);
    CHECK(many[i].place.line == 12);
  }
  CHECK(many[1].sentence.starts_with(
      "digit 0: bridges 2 in wide cannot hold its island, expected bridges "));
}

}  // namespace
}  // namespace swathe
