#include <doctest/doctest.h>

#include "sight/demand.hpp"
#include "support/checked.hpp"
#include "support/jobs.hpp"
#include "support/sight.hpp"

// Viewpoints: the published rules, manual of 2026, section 8.4, R412 ("most", a guideline), and of
// 2023, section 9, R406 ("any viewpoint").
namespace swathe {
namespace {

using test::of;
using test::worst;

/// A square machine, one bumper a side, numbers on some of them, boxes before others.
test::Checked machine(const std::vector<std::string>& sides, const char* season,
                      std::vector<BlindKeys> blind = {}, double height = 98.4) {
  Job job = test::worked_job();
  job.number = "20486";
  job.sight.blind = std::move(blind);
  test::Checked c = test::made(job);
  const auto numbers = test::numbers_on(c.wraps, sides, height);
  REQUIRE(numbers.size() == sides.size());
  c.numerals = test::numerals_on(c, {});
  for (const SightNumber& number : numbers) {
    PlacedNumeral placed;
    placed.text = number.text;
    placed.showing = static_cast<int>(c.numerals->placed.size());
    placed.bumper = number.digits.front().bumper;
    placed.side = number.side;
    placed.height = height;
    c.numerals->placed.push_back(placed);
  }
  const auto rules = bundled_season(season);
  REQUIRE(rules.has_value());
  c.sight =
      sweep(make_scene(c.wraps, numbers, job.sight.blind), job.sight, demand_of(&*rules).distance);
  c.sight->advice = "turn it";
  return c;
}

TEST_CASE("sight: most viewpoints is more than half, and a guideline") {
  const Finding three = worst(machine({"front", "left", "back"}, "2026").by("2026"), "sight");
  CHECK(three.verdict == Verdict::Pass);
  CHECK(three.rule == "2026 R412");
  CHECK(three.required == "can be read from most viewpoints, up to about 60 ft away");
  CHECK(three.measured.find("60 ft away, eyes ") != std::string::npos);
  const Finding one = worst(machine({"front"}, "2026").by("2026"), "sight");
  CHECK(one.verdict == Verdict::Warn);
  CHECK(one.advice == "turn it");
}

TEST_CASE("sight: every viewpoint is all of them, and no guideline") {
  CHECK(worst(machine({"front", "left", "back", "right"}, "2023").by("2023"), "sight").verdict ==
        Verdict::Pass);
  const Finding three = worst(machine({"front", "left", "back"}, "2023").by("2023"), "sight");
  CHECK(three.verdict == Verdict::Fail);
  CHECK(three.rule == "2023 R406");
  CHECK(three.required == "can be read from every viewpoint");
}

TEST_CASE("sight: a part that looks like another number is named, with what it looks like") {
  // Before the last digits of the left side's number.
  const auto c =
      machine({"front", "left", "back"}, "2026", {test::blind_box(-300, 200, 0, -120, 330, 300)});
  bool told = false;
  for (const Finding& finding : of(c.by("2026"), "sight")) {
    if (finding.measured.find("looks like 2") == std::string::npos) continue;
    told = true;
    CHECK(finding.verdict == Verdict::Warn);
    CHECK(finding.rule.empty());
    CHECK(finding.subject == "left numeral");
  }
  CHECK(told);
}

TEST_CASE("sight, places: a number that is hidden all round serves nobody and is no place") {
  const auto c = machine({"front", "left", "back"}, "2026",
                         {test::blind_box(-400, -500, 0, -120, 1300, 3000)});
  const Finding places = worst(c.by("2026"), "numeral-places");
  CHECK(places.verdict == Verdict::Fail);
  CHECK(places.measured == "2: front, back");
  bool told = false;
  for (const Finding& finding : of(c.by("2026"), "sight"))
    told = told || (finding.subject == "left numeral" && finding.measured == "cannot be read");
  CHECK(told);
}

TEST_CASE("sight: too small for the distance") {
  const auto c = machine({"front", "left", "back"}, "2026", {}, 60);
  const auto findings = of(c.by("2026"), "sight");
  REQUIRE(findings.size() == 4);
  CHECK(findings[0].verdict == Verdict::Warn);
  CHECK(findings[1].measured.find("can be read from at most 4") == 0);
}

TEST_CASE("no sight, no check of it") {
  test::Checked c = machine({"front"}, "2026");
  c.sight.reset();
  CHECK(of(c.by("2026"), "sight").empty());
}

}  // namespace
}  // namespace swathe
