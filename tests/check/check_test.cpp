#include "check/check.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <utility>

#include "support/checked.hpp"
#include "support/jobs.hpp"

namespace swathe {
namespace {

test::Checked sample() {
  Job job = test::c_halves(711.2, 762);
  job.number = "20486";
  test::Checked c = test::made(job);
  c.numerals = test::numerals_on(c, {"left", "right"});
  c.stock = Stock();
  c.stock->set.boards_g = 5000;
  return c;
}

/// Jobs of all sorts, good and bad.
test::Checked drawn(std::mt19937& dice) {
  const auto between = [&](double a, double b) {
    return a + (b - a) * static_cast<double>(dice() % 1000) / 1000.0;
  };
  Job job = test::c_halves(between(500, 900), between(500, 900));
  job.number = "20486";
  job.frame.fit = mm(between(0, 8));
  job.frame.floor_gap = mm(between(0, 100));
  job.boards.height = mm(between(110, 145));
  job.padding.diameter = mm(between(48, 70));
  job.boards.hard_depth = mm(between(0, 20));
  job.bumpers[0].end_clearance = mm(between(2, 40));
  job.numerals.color = {1, 1, between(0, 1.3) > 1 ? 1.0 : 0.0};
  test::Checked c = test::made(job);
  c.numerals = test::numerals_on(c, {"left", "right"});
  for (auto& placed : c.numerals->placed) placed.height = between(80, 110);
  c.stock = Stock();
  c.stock->set.boards_g = between(4000, 9000);
  return c;
}

Season graded(Attested grade) {
  auto season = bundled_season(grade == Attested::Unverified ? "2021" : "2020");
  REQUIRE(season.has_value());
  return *season;
}

}  // namespace

TEST_CASE("check (1): an unverified value neither passes nor fails, whatever the job") {
  std::mt19937 dice(1);
  int warned = 0;
  for (int round = 0; round < 100; ++round) {
    const Season season = graded(Attested::Unverified);
    for (const Finding& finding : drawn(dice).by(&season)) {
      if (finding.rule.empty()) continue;
      CAPTURE(finding.id);
      CHECK(finding.attested == Attested::Unverified);
      CHECK(finding.verdict != Verdict::Pass);
      CHECK(finding.verdict != Verdict::Fail);
      CHECK_FALSE(finding.advice.empty());
      if (finding.verdict == Verdict::Warn) ++warned;
    }
  }
  CHECK(warned > 100);
}

TEST_CASE("check (1): the same values, official, pass and fail") {
  std::mt19937 dice(1);
  int passed = 0, failed = 0;
  for (int round = 0; round < 100; ++round) {
    const Season season = graded(Attested::Official);
    for (const Finding& finding : drawn(dice).by(&season)) {
      passed += finding.verdict == Verdict::Pass ? 1 : 0;
      failed += finding.verdict == Verdict::Fail ? 1 : 0;
    }
  }
  CHECK(passed > 100);
  CHECK(failed > 100);
}

TEST_CASE("check (2): what no drawing shows is unknown, with what to look at") {
  const auto found = sample().by("2026");
  for (const char* id : {"fastening", "markings", "weight", "hard-parts"}) {
    const Finding finding = test::worst(found, id);
    CAPTURE(id);
    CHECK(finding.verdict == Verdict::Unknown);
    CHECK_FALSE(finding.advice.empty());
  }
}

TEST_CASE("check (4): no season, no rule; only our own advice") {
  for (const Finding& finding : sample().by(nullptr)) {
    CHECK(finding.rule.empty());
    CHECK(finding.verdict != Verdict::Fail);
  }
}

TEST_CASE("worst comes first, and what passes needs no advice") {
  std::mt19937 dice(2);
  for (int round = 0; round < 50; ++round) {
    const auto found = drawn(dice).by("2026");
    CHECK(std::ranges::is_sorted(found, {}, &Finding::verdict));
    for (const Finding& finding : found) {
      CAPTURE(finding.id);
      CHECK((finding.verdict == Verdict::Pass) == finding.advice.empty());
      CHECK((finding.rule.empty() || finding.rule.starts_with("2026 ")));
    }
  }
}

// The ids that other people's scripts may rely on; `sight` is added where views are made.
TEST_CASE("every id is one that the report names") {
  const std::vector<std::string> known = {
      "numeral-height", "numeral-stroke",  "numeral-color", "numeral-outline", "numeral-corner",
      "numeral-places", "numeral-spacing", "contrast",      "cover-gap",       "cover-cloth",
      "cloth-color",    "markings",        "corner-reach",  "corner-fill",     "padding-depth",
      "padding-height", "padding-core",    "padding-form",  "backing-height",  "backing-thickness",
      "extension",      "hard-parts",      "zone",          "fastening",       "support",
      "weight"};
  for (const auto& season : season_names()) {
    for (const Finding& finding : sample().by(season)) {
      CAPTURE(finding.id);
      CHECK(std::ranges::find(known, finding.id) != known.end());
    }
  }
}

TEST_CASE("lengths are worded in the job's units") {
  test::Checked c = sample();
  CHECK(test::worst(c.by("2026"), "padding-depth").required == "at least 2 1/4 in");
  c.job.units = Units::Millimeters;
  CHECK(test::worst(c.by("2026"), "padding-depth").required == "at least 57.15 mm");
  CHECK(test::worst(c.by("2026"), "padding-depth").measured == "63.5 mm");
}

TEST_CASE("a measured length reads as on a tape measure, and as its limit only where it is that") {
  Job job = test::worked_job();
  const auto depth = [&](Length diameter) {
    job.padding.diameter = diameter;
    return test::worst(test::made(job).by("2026"), "padding-depth");
  };
  const std::pair<Length, const char*> told[] = {
      {inches(2.5), "2 1/2 in"},  // as the job gives it
      {inches(2 + 25.0 / 64), "2 25/64 in"},
      {inches(2.4), "2 3/8 in"},     // else to 1/16
      {mm(60), "2 3/8 in"},          // 2.362 in
      {inches(2.24), "2 15/64 in"},  // to 1/16 and 1/32 it would be the 2 1/4 in asked for
      {inches(2.245), "2.245 in"},   // and this to 1/64 too
      {mm(57.147), "2.2499 in"},     // and this to 0.001: 0.003 mm less are less
      {mm(57.1495), "2 1/4 in"},     // what no tape measure shows
  };
  for (const auto& [diameter, words] : told) CHECK(depth(diameter).measured == words);

  const double asked = inches(2.25).mm();
  for (int k = -60; k <= 60; ++k) {
    const Finding finding = depth(inches(2.25 + 0.0007 * k));
    CAPTURE(finding.measured);
    const auto is = parse_length(finding.measured, Units::Millimeters);
    REQUIRE(is.has_value());
    CHECK((is->mm() < asked - 1e-9) == (finding.verdict != Verdict::Pass));
    CHECK((is->mm() > asked + 1e-9) == (k > 0));
    CHECK(std::abs(is->mm() - job.padding.diameter.mm()) <= inches(1.0 / 32).mm() + 1e-9);
  }
}

}  // namespace swathe
