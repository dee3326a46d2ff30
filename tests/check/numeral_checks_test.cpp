#include <doctest/doctest.h>

#include "support/checked.hpp"
#include "support/jobs.hpp"

// The limits are the published rules' (manual of 2026, section 8.4, R412; of 2023, R406; of 2020,
// R22); the readings stand beside each test.
namespace swathe {
namespace {

using test::of;
using test::worst;

/// Two C-halves of a 28 x 30 in frame with their numbers on.
test::Checked halves(const std::vector<std::string>& sides = {"front", "left", "back", "right"}) {
  Job job = test::c_halves(711.2, 762);
  job.number = "20486";
  job.bumpers[0].from.at = RunEnd::Share{0.8};  // A carries the front and the left, B the others
  job.bumpers[0].from.side = "right";
  job.bumpers[0].to.side = "left";
  job.bumpers[0].to.at = RunEnd::Share{0.8};
  job.bumpers[1].from.side = "left";
  job.bumpers[1].from.at = RunEnd::Share{0.8};
  job.bumpers[1].to.side = "right";
  job.bumpers[1].to.at = RunEnd::Share{0.8};
  test::Checked c = test::made(job);
  c.numerals = test::numerals_on(c, sides);
  return c;
}

}  // namespace

TEST_CASE("numeral height has no grace: 3.75 in passes, a hair less fails") {
  test::Checked c = halves();
  for (auto& placed : c.numerals->placed) placed.height = 3.75 * 25.4;
  CHECK(worst(c.by("2026"), "numeral-height").verdict == Verdict::Pass);
  c.numerals->placed[2].height = 3.74 * 25.4;
  const Finding low = worst(c.by("2026"), "numeral-height");
  CHECK(low.verdict == Verdict::Fail);
  CHECK(low.rule == "2026 R412");
  CHECK(low.required == "at least 3 3/4 in");
  CHECK(low.measured == "3 47/64 in");
  CHECK(low.advice == "set numerals.height to 3 7/8 in");
}

TEST_CASE("the same numeral fails in 2023, which asks 4 in") {
  CHECK(worst(halves().by("2023"), "numeral-height").verdict == Verdict::Fail);
  CHECK(worst(halves().by("2026"), "numeral-height").verdict == Verdict::Pass);
}

TEST_CASE("a stroke must be half an inch for more than half of its length") {
  test::Checked c = halves();
  c.numerals->digits = {test::digit('2', 13, 0.51), test::digit('0', 13, 0.9)};
  const Finding pass = worst(c.by("2026"), "numeral-stroke");
  CHECK(pass.verdict == Verdict::Pass);
  CHECK(pass.subject == "digit 2");  // the nearest to failing
  c.numerals->digits[0] = test::digit('2', 13, 0.49);
  c.numerals->digits.push_back(test::digit('4', 12));
  const auto fails = of(c.by("2026"), "numeral-stroke");
  REQUIRE(fails.size() == 2);
  CHECK(fails[0].verdict == Verdict::Fail);
  CHECK(fails[1].subject == "digit 4");
}

TEST_CASE("bridges count: what is left of the stroke is judged") {
  test::Checked c = halves();
  Digit bridged = test::digit('0', 15);
  bridged.bridges.resize(1);
  bridged.stroke_after_bridges = test::digit('0', 15, 0.4).stroke;
  c.numerals->digits = {bridged};
  CHECK(worst(c.by("2026"), "numeral-stroke").verdict == Verdict::Fail);
}

// Corner angles are inside angles. A square corner is 90 deg; a square with its corners cut at 45
// deg has 135 deg, which is no sharper than 135 and sharper than 160.
TEST_CASE("a number may go round 135 deg in 2026 and not in 2023, round 90 deg in neither") {
  test::Checked square = halves({"left"});
  square.numerals->placed[0].center_s = square.wraps[0].run().corners[0].s + 100;
  CHECK(worst(square.by("2026"), "numeral-corner").verdict == Verdict::Fail);
  CHECK(worst(square.by("2026"), "numeral-corner").measured == "round a corner of 90 deg");
  square.numerals->placed[0].center_s = square.wraps[0].run().corners[0].s + 130;
  CHECK(worst(square.by("2026"), "numeral-corner").verdict == Verdict::Pass);

  Job job = test::c_halves(711.2, 762);
  job.number = "7";
  job.frame.corners = {{700, 800}, {100, 800}, {0, 700}, {0, 0}, {700, 0}};
  job.frame.sides = {"front", "cut", "left", "back", "right"};
  job.boards.joint = Joint::Mitred;
  job.padding.corner = PaddingCorner::Mitred;
  job.bumpers = {test::half("A", "front", "back"), test::half("B", "back", "front")};
  test::Checked cut = test::made(job);
  cut.numerals = test::numerals_on(cut, {"front"});
  cut.numerals->placed[0].center_s = cut.wraps[0].run().corners[0].s;
  CHECK(worst(cut.by("2026"), "numeral-corner").verdict == Verdict::Pass);
  CHECK(worst(cut.by("2023"), "numeral-corner").verdict == Verdict::Fail);
  CHECK(worst(cut.by("2013"), "numeral-corner").verdict == Verdict::Fail);
}

TEST_CASE("places are counted by where their sides look") {
  CHECK(worst(halves().by("2026"), "numeral-places").verdict == Verdict::Pass);
  const auto two = of(halves({"front", "back"}).by("2026"), "numeral-places");
  REQUIRE(!two.empty());
  CHECK(two[0].verdict == Verdict::Fail);
  CHECK(two[0].advice == "put the number on 1 more side");
  CHECK(of(halves({"front", "back"}).by("2023"), "numeral-places").size() == 1);  // advice only
}

TEST_CASE("three places are legal, and leave a quarter that is told of under no rule") {
  const auto found = of(halves({"front", "left", "right"}).by("2026"), "numeral-places");
  REQUIRE(found.size() == 2);
  CHECK(found[0].verdict == Verdict::Warn);
  CHECK(found[0].rule.empty());
  CHECK(found[1].verdict == Verdict::Pass);
  CHECK(found[1].rule == "2026 R412");
}

TEST_CASE("two numbers on one face are one place") {
  test::Checked c = halves({"front", "left"});
  c.numerals->placed.push_back(c.numerals->placed[0]);
  CHECK(worst(c.by("2026"), "numeral-places").verdict == Verdict::Fail);
}

TEST_CASE("a number that does not fit its side is named with what to change") {
  test::Checked c = halves({"front", "left", "right"});
  c.numerals->misfits = {{0, "back", 300, 250, "a narrower font is 240 mm wide"},
                         {-1, "side9", 0, 0, "cover that side"}};
  const auto found = of(c.by("2026"), "numeral-places");
  REQUIRE(found.size() == 4);
  CHECK(found[0].subject == "back numeral");
  CHECK(found[0].verdict == Verdict::Warn);
  CHECK(found[0].advice == "a narrower font is 240 mm wide");
  CHECK(of(c.by(nullptr), "numeral-places")[0].rule.empty());
}

TEST_CASE("no number in the job is not known to be a fault") {
  test::Checked c = halves();
  c.job.number.clear();
  c.numerals.reset();
  CHECK(worst(c.by("2026"), "numeral-places").verdict == Verdict::Unknown);
  CHECK(of(c.by("2026"), "numeral-height").empty());
  CHECK(of(c.by("2026"), "contrast").empty());
}

TEST_CASE("digit spacing is a guideline: at worst a warning") {
  test::Checked c = halves();
  CHECK(worst(c.by("2026"), "numeral-spacing").verdict == Verdict::Pass);
  c.numerals->placed[1].largest_space = 110;  // 4 in are 101.6 mm
  CHECK(worst(c.by("2026"), "numeral-spacing").verdict == Verdict::Warn);
}

TEST_CASE("a number split over a gap: its space counts, and the season must let it") {
  test::Checked c = halves();
  PlacedNumeral& first = c.numerals->placed[1];
  first.text = "20";
  first.whole = false;
  PlacedNumeral second = first;
  second.text = "486";
  second.space_across = 60;  // 2.36 in
  c.numerals->placed.insert(c.numerals->placed.begin() + 2, second);
  // 4 in and 2 in between digits (manual of 2026, R412; of 2024, R406, quoted); 2023 says that a
  // number may be split (R406); 2020 has no word on it.
  CHECK(worst(c.by("2026"), "numeral-spacing").verdict == Verdict::Pass);
  const Finding apart = worst(c.by("2024"), "numeral-spacing");
  CHECK(apart.verdict == Verdict::Warn);
  CHECK(apart.measured == "2 3/8 in");
  CHECK(of(c.by("2023"), "numeral-spacing").front().verdict == Verdict::Pass);
  const Finding silent = worst(c.by("2020"), "numeral-spacing");
  CHECK(silent.verdict == Verdict::Warn);
  CHECK(silent.rule.empty());
}

TEST_CASE("digits that nearly touch are told of under no rule") {
  // United Kingdom, number plates of 2001: 79 mm high, 11 mm between; so 13.65 mm at 98 mm.
  test::Checked c = halves();
  c.numerals->height = 98;
  c.numerals->placed[2].least_space = 13.7;
  const Finding enough = of(c.by("2026"), "numeral-spacing").back();
  CHECK(worst(c.by("2026"), "numeral-spacing").verdict == Verdict::Pass);
  CHECK(enough.verdict == Verdict::Pass);
  // 0.537 and 0.539 in: to 1/16 and 1/32 in they read the same.
  CHECK(enough.required == "at least 17/32 in: about 1/7 of the height");
  CHECK(enough.measured == "35/64 in");
  c.numerals->placed[2].least_space = 10;
  const Finding close = worst(c.by("2026"), "numeral-spacing");
  CHECK(close.verdict == Verdict::Warn);
  CHECK(close.rule.empty());
  CHECK(close.required == "at least 9/16 in: about 1/7 of the height");
  CHECK(close.measured == "3/8 in");
  // 3.65 mm more would do: 3/16 in are 4.76 mm, 1/8 in 3.18 mm.
  CHECK(close.advice.starts_with("set numerals.spacing to 3/16 in"));
}

TEST_CASE("white alone in 2026; white or outlined in white in 2020") {
  test::Checked c = halves();
  CHECK(worst(c.by("2026"), "numeral-color").verdict == Verdict::Pass);
  c.job.numerals.color = {1, 1, 0};
  c.job.numerals.outline = inches(1.0 / 16);
  CHECK(worst(c.by("2026"), "numeral-color").verdict == Verdict::Fail);
  CHECK(of(c.by("2026"), "numeral-outline").empty());
  CHECK(worst(c.by("2020"), "numeral-color").verdict == Verdict::Pass);
  CHECK(worst(c.by("2020"), "numeral-outline").verdict == Verdict::Pass);
  c.job.numerals.outline = inches(1.0 / 32);
  CHECK(worst(c.by("2020"), "numeral-outline").verdict == Verdict::Fail);
  c.job.numerals.outline = mm(0);
  CHECK(worst(c.by("2020"), "numeral-color").verdict == Verdict::Fail);
}

}  // namespace swathe
