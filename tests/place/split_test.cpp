#include "place/split.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "support/drawn.hpp"
#include "support/fonts.hpp"
#include "support/jobs.hpp"
#include "support/setting.hpp"

namespace swathe {
namespace {

using test::kInch;
using test::placed;
using test::Setting;
using test::setting;

/// Halves so short that a number of five digits stands whole on the left and right sides only.
Setting narrow(double width_inches, const std::string& number = "20486") {
  Setting s = setting(test::c_halves(width_inches * kInch, 30 * kInch), number);
  s.may_split = true;
  return s;
}

SpacePoint in_space(const Setting& s, int bumper, ClothPoint p) {
  const auto at = s.wraps[static_cast<std::size_t>(bumper)].at(p);
  REQUIRE(at.has_value());
  return *at;
}

plane::Box ink_of(const Setting& s, const PlacedNumeral& p) {
  plane::Box ink;
  for (const PlacedDigit& digit : p.digits) {
    const plane::Box& shape = s.number.shape(digit.digit).ink;
    ink.cover(plane::Box{shape.lo + digit.origin, shape.hi + digit.origin});
  }
  return ink;
}

/// Both parts of a showing hold together: checked in space, where the gap is what it is.
void check_parts(const Setting& s, const PlacedNumeral& left, const PlacedNumeral& right) {
  CHECK(left.showing == right.showing);
  CHECK(left.side == right.side);
  CHECK_FALSE(left.whole);
  CHECK_FALSE(right.whole);
  CHECK(left.text + right.text == s.number.text);
  CHECK(left.from == 0);
  CHECK(right.from == static_cast<int>(left.text.size()));
  CHECK(left.space_across == 0);
  // All digits stand on one base line, as in the whole number.
  for (const PlacedNumeral* part : {&left, &right})
    for (const PlacedDigit& digit : part->digits)
      CHECK(digit.origin.y == doctest::Approx(-s.number.ink.middle().y));
  // The front of both bumpers is one plane, so the straight way between two inks is the space.
  const plane::Box before = ink_of(s, left), after = ink_of(s, right);
  const SpacePoint a = in_space(s, left.bumper, {before.hi.x, 0});
  const SpacePoint b = in_space(s, right.bumper, {after.lo.x, 0});
  CHECK(std::hypot(b.x - a.x, b.y - a.y, b.z - a.z) == doctest::Approx(right.space_across));
  // Each part lies on its bumper with its margin, on the one side, off the corners.
  for (const PlacedNumeral* part : {&left, &right}) {
    const Wrap& wrap = s.wraps[static_cast<std::size_t>(part->bumper)];
    const plane::Box ink = ink_of(s, *part);
    CHECK(ink.middle().x == doctest::Approx(part->center_s));
    CHECK(ink.width() == doctest::Approx(part->width));
    const double margin = kNumeralMargin.mm() - 1e-6;
    for (double at = ink.lo.x - margin; at <= ink.hi.x + margin; at += 1) {
      const int on = wrap.run().sides[static_cast<std::size_t>(wrap.side_of(at))].side;
      CHECK(on == *wrap.frame().side(part->side));
      CHECK(wrap.at({at, ink.lo.y}).has_value());
      CHECK(wrap.at({at, ink.hi.y}).has_value());
    }
  }
}

TEST_CASE("split: where the number fits whole on two sides only, the third is split at its gap") {
  const Setting s = narrow(16);
  const PlacedNumbers placing = placed(s);
  CHECK(placing.misfits.empty());
  REQUIRE(placing.placed.size() == 4);
  CHECK(placing.placed[0].whole);
  CHECK(placing.placed[1].whole);
  check_parts(s, placing.placed[2], placing.placed[3]);
  CHECK(placing.placed[3].showing == 2);
  CHECK((placing.placed[2].side == "front" || placing.placed[2].side == "back"));
  // Two margins and twice the clearance of 1/4 in that each end has: about an inch.
  CHECK(placing.placed[3].space_across == doctest::Approx(1 * kInch).epsilon(0.02));
}

TEST_CASE("split (4): no number that fits whole on enough sides is split") {
  Setting roomy = narrow(28);
  for (const PlacedNumeral& p : placed(roomy).placed) CHECK(p.whole);
  Setting enough = narrow(16);
  enough.least_places = 2;
  CHECK(placed(enough).placed.size() == 2);
  enough.least_places = 0;  // a season that counts none
  CHECK(placed(enough).placed.size() == 2);
}

TEST_CASE("split (4): none where the season does not let it, or its parts stand too far apart") {
  Setting s = narrow(16);
  s.may_split = false;
  CHECK(placed(s).placed.size() == 2);
  CHECK(placed(s).misfits.size() == 1);
  s.may_split = true;
  s.most_space = inches(0.9);
  CHECK(placed(s).placed.size() == 2);
  s.most_space = inches(1.1);
  CHECK(placed(s).placed.size() == 4);
}

TEST_CASE("split: on a side asked for by name too") {
  Setting s = narrow(16);
  s.job.numerals.sides = {"back", "left"};
  const PlacedNumbers placing = placed(s);
  REQUIRE(placing.placed.size() == 3);
  check_parts(s, placing.placed[0], placing.placed[1]);
  CHECK(placing.placed[0].side == "back");
  CHECK(placing.placed[2].whole);
}

TEST_CASE("split: a bumper that goes all round has its own two ends at the gap") {
  Job job = test::c_halves(16 * kInch, 30 * kInch);
  job.bumpers = {test::half("A", "front", "front")};
  job.bumpers[0].from.at = RunEnd::Share{0.52};
  job.bumpers[0].to.at = RunEnd::Share{0.48};
  Setting s = setting(job, "20486");
  s.may_split = true;
  s.job.numerals.sides = {"front"};
  const PlacedNumbers placing = placed(s);
  REQUIRE(placing.placed.size() == 2);
  check_parts(s, placing.placed[0], placing.placed[1]);
  CHECK(placing.placed[0].bumper == placing.placed[1].bumper);
  CHECK(placing.placed[0].center_s >
        placing.placed[1].center_s);  // its end stands left of its start
}

TEST_CASE("split: by hand, after as many digits as asked; what is advised does") {
  Setting s = narrow(20);
  s.job.numerals.places = {{"front", {}, "B", 2}};
  const PlacedNumbers placing = placed(s);
  REQUIRE(placing.placed.size() == 2);
  check_parts(s, placing.placed[0], placing.placed[1]);
  CHECK(placing.placed[0].text == "20");
  CHECK(placing.placed[1].text == "486");

  Setting tight = narrow(11);
  tight.job.numerals.places = {{"front", {}, "B", 4}};
  const PlacedNumbers missed = placed(tight);
  REQUIRE(missed.placed.empty());
  REQUIRE(missed.misfits.size() == 1);
  const std::string& advice = missed.misfits[0].advice;
  CAPTURE(advice);
  REQUIRE(advice.starts_with("set numerals.place.1.split to "));
  tight.job.numerals.places[0].split = advice.back() - '0';
  CHECK(placed(tight).misfits.empty());
  CHECK(placed(tight).placed.size() == 2);

  s.job.numerals.places = {{"left", {}, "A", 2}};  // no other bumper reaches the left side
  CHECK(placed(s).placed.empty());
  CHECK(placed(s).misfits.size() == 1);
}

TEST_CASE("split: refused where it lies over another number, or leaves no digit") {
  Setting s = narrow(28, "11");
  s.job.places.set("numerals.place.1.split", {"job.toml", 9, 9});
  s.job.numerals.places = {{"front", {}, "B", 1}, {"front", {}, "B", 1}};
  auto refused = place_number(s.input());
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error().front().why == Why::DoesNotFit);
  CHECK(refused.error().front().place.line == 9);
  s.job.numerals.places = {{"front", {}, "B", 2}};
  refused = place_number(s.input());
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error().front().why == Why::OutOfRange);
}

/// How far the band stays on the cloth, on one side and off every dart, from an end face inwards:
/// in small steps, with nothing but the map.
double free_from_end(const Wrap& wrap, bool at_start, double half_height) {
  constexpr double kStep = 0.25;
  const double length = wrap.run().length;
  const auto side_at = [&](double s) {
    return wrap.run().sides[static_cast<std::size_t>(wrap.side_of(s))].side;
  };
  const int side = side_at(at_start ? 0.0 : length);
  for (double d = 0; d <= length; d += kStep) {
    const double s = at_start ? d : length - d;
    bool clear = side_at(s) == side;
    for (int i = -8; i <= 8 && clear; ++i) clear = wrap.at({s, half_height * i / 8}).has_value();
    if (!clear) return d - kStep;
  }
  return length;
}

// A number is split on the front if and only if a scan finds a way to split it.
TEST_CASE("split: drawn jobs, against every split tried on a scan of the cloth") {
  int split = 0, not_split = 0;
  test::for_drawn_cases("split", test::kSplitCases, [&](auto& rng) {
    Job job = test::c_halves(test::drawn(rng, 340, 560), 30 * kInch);
    job.padding.corner = std::uniform_int_distribution<int>(0, 1)(rng) == 0 ? PaddingCorner::Mitred
                                                                            : PaddingCorner::Bent;
    job.bumpers[0].from.at = job.bumpers[1].to.at = RunEnd::Share{test::drawn(rng, 0.38, 0.62)};
    job.bumpers[0].end_clearance = mm(test::drawn(rng, 0, 30));
    const auto& fonts = test::numeral_fonts();
    const auto& font = fonts[std::uniform_int_distribution<std::size_t>(0, fonts.size() - 1)(rng)];
    Setting s = setting(job, "20486", inches(test::drawn(rng, 3.75, 4.5)), font.name);
    s.may_split = true;
    s.most_space = mm(test::drawn(rng, 20, 80));
    s.job.numerals.sides = {"front"};
    const PlacedNumbers placing = placed(s);
    if (placing.placed.size() == 1) return;  // whole
    const double half = s.number.ink.height() / 2, margin = kNumeralMargin.mm();
    const double left = free_from_end(s.wraps[1], false, half) - margin;
    const double right = free_from_end(s.wraps[0], true, half) - margin;
    const SpacePoint a = in_space(s, 1, {s.wraps[1].run().length, 0}), b = in_space(s, 0, {0, 0});
    const double space = std::hypot(b.x - a.x, b.y - a.y) + 2 * margin;
    bool may = false, surely_not = true;
    for (std::size_t n = 1; n < 5; ++n) {
      const double before = part_of(s.number, 0, n).ink.width() + margin - left + margin;
      const double after = part_of(s.number, n, 5).ink.width() + margin - right + margin;
      const double over = std::max({before - margin, after - margin, space - s.most_space->mm()});
      may = may || over < -0.6;
      surely_not = surely_not && over > 0.6;
    }
    if (may) CHECK(placing.placed.size() == 2);
    if (surely_not) CHECK(placing.placed.empty());
    if (placing.placed.size() == 2) {
      check_parts(s, placing.placed[0], placing.placed[1]);
      CHECK(placing.placed[1].space_across <= s.most_space->mm() + 1e-6);
      ++split;
    } else {
      ++not_split;
    }
  });
  CHECK(split > 0);
  CHECK(not_split > 0);
}

}  // namespace
}  // namespace swathe
