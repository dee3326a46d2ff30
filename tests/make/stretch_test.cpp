#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "support/drawn_number.hpp"
#include "support/jobs.hpp"
#include "support/made.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"

// Cloth that is pulled: the bumper under it stays as it is, and so does what is judged of it.
namespace swathe {
namespace {

#ifdef SWATHE_SANITIZED
constexpr int kJobs = 15;
#else
constexpr int kJobs = 100;
#endif

using Json = nlohmann::json;

/// Verdicts by what they are on. A rule may tell of one subject twice.
std::multimap<std::string, std::string> verdicts(const Made& made) {
  std::multimap<std::string, std::string> all;
  for (const Finding& finding : made.findings)
    // The weight of a set has its cloth in it, which is cut smaller where it is pulled.
    if (finding.id != "weight")
      all.emplace(finding.id + ": " + finding.subject, to_text(finding.verdict));
  return all;
}

/// Everything that a report tells of one cover lies within it and agrees with the rest.
void check_one_space(const Json& report) {
  constexpr double kGrid = 2e-4;  // what a report's four decimals may take
  double low = 0, high = 0;
  for (const Json& station : report["section"]["stations"]) {
    low = std::min(low, station["u_mm"].get<double>());
    high = std::max(high, station["u_mm"].get<double>());
  }
  CHECK(std::abs(report["section"]["cloth_girth_mm"].get<double>() - (high - low)) < kGrid);
  for (const Json& bumper : report["bumpers"]) {
    double least = 1e300, most = -1e300;
    for (const Json& p : bumper["points_mm"]) {
      least = std::min(least, p[1].get<double>());
      most = std::max(most, p[1].get<double>());
    }
    CHECK(std::abs(least - low) < kGrid);
    CHECK(std::abs(most - high) < kGrid);
    const Json& corners = bumper["corners"];
    const Json& sides = bumper["sides"];
    const double length = bumper["length_mm"];
    // The k-th side lies between its two corner lines; a side may come twice, at both ends.
    const auto on_some = [&](const std::string& side, double from, double to) {
      for (std::size_t k = 0; k < sides.size(); ++k) {
        const double start = k == 0 ? 0.0 : corners[k - 1]["s_mm"].get<double>();
        const double end = k < corners.size() ? corners[k]["s_mm"].get<double>() : length;
        if (sides[k] == side && from > start - kGrid && to < end + kGrid) return true;
      }
      return false;
    };
    for (const Json& clear : bumper["clear"])
      CHECK(on_some(clear["side"], clear["from_s_mm"], clear["to_s_mm"]));
    for (const Json& numeral : bumper["numerals"]) {
      const double center = numeral["center_s_mm"];
      const bool in_clear = std::ranges::any_of(bumper["clear"], [&](const Json& clear) {
        return clear["side"] == numeral["side"] &&
               center > clear["from_s_mm"].get<double>() - kGrid &&
               center < clear["to_s_mm"].get<double>() + kGrid;
      });
      CHECK(in_clear);
    }
    for (const Json& bracket : bumper["brackets"]) {
      const double from = bracket["s_mm"];
      CHECK(on_some(bracket["side"], from, from + bracket["width_mm"].get<double>()));
    }
  }
}

void pull(Job& job, std::mt19937_64& rng) {
  job.cloth.stretch_along = test::drawn(rng, 0, 0.1);
  job.cloth.stretch_around = job.cloth.hook_and_loop.stretch = test::drawn(rng, 0, 0.1);
}

}  // namespace

// 1,000 of them: SWATHE_DRAWN=1000.
TEST_CASE(
    "drawn jobs: cloth that is pulled changes no verdict, and the report stays in one space") {
  int compared = 0, with_number = 0;
  test::for_drawn_cases("drawn-stretch", kJobs, [&](std::mt19937_64& rng) {
    Job job = test::drawn_number(rng);
    if (rng() % 3 == 0) job.cloth.fixing = Fixing::HookAndLoop;
    job.cloth.stretch_along = job.cloth.stretch_around = job.cloth.hook_and_loop.stretch = 0;
    const Outcome<Made> slack = test::make_text(job_text(job));
    if (!slack) return;
    pull(job, rng);
    CAPTURE(job_text(job));
    const Outcome<Made> pulled = test::make_text(job_text(job));
    REQUIRE_MESSAGE(pulled.has_value(), to_text(pulled.error().front()));
    CHECK(verdicts(*pulled) == verdicts(*slack));
    check_one_space(Json::parse(report_json(*slack, {})));
    check_one_space(Json::parse(report_json(*pulled, {})));
    ++compared;
    with_number += !pulled->numerals->placed.empty();
  });
  CHECK(compared > 0);
  CHECK(with_number > 0);
}

// Moved 6 % towards the start, as the pattern has it, this number lies over the corner line before
// its side; held there against the corners of the cover in place it was told to stand round one.
TEST_CASE("a numeral wholly on one side stands round no corner, however far the cloth is pulled") {
  Job job = test::c_halves(48 * 25.4, 16 * 25.4);
  job.number = "20486";
  job.season = "2026";
  job.cloth.stretch_along = 0.06;
  job.numerals.sides = {{"right"}};
  job.bumpers = {{"A", {"front", RunEnd::Share{0.6}}, {"front", RunEnd::Share{0.4}}, mm(6)}};
  const Made made = test::made(job_text(job));
  REQUIRE(made.numerals->placed.size() == 1);
  const PlacedNumeral& placed = made.numerals->placed.front();
  const double corner = made.wraps[0].run().corners[2].s;  // from back to right
  CHECK(placed.center_s - corner > 0.5 * placed.width);
  CHECK(std::abs(0.94 * placed.center_s - corner) < 0.5 * placed.width);
  int judged = 0;
  for (const Finding& finding : made.findings)
    if (finding.id == "numeral-corner") {
      CHECK(finding.measured == "each on one side");
      CHECK(finding.verdict == Verdict::Pass);
      ++judged;
    }
  CHECK(judged == 1);
}

// The pattern bears each number where its side's cloth is, at full size: it goes on first.
TEST_CASE("a numeral's place follows the pattern, its size does not") {
  Job job = test::c_halves(28 * 25.4, 30 * 25.4);
  job.number = "20486";
  const Made slack = test::made(job_text(job));
  job.cloth.stretch_along = 0.06;
  const Made pulled = test::made(job_text(job));
  const auto before = slack.numerals_on_patterns(), after = pulled.numerals_on_patterns();
  REQUIRE(before.size() == after.size());
  REQUIRE(!before.empty());
  for (std::size_t k = 0; k < before.size(); ++k) {
    CHECK(after[k].center_s == doctest::Approx(0.94 * before[k].center_s));
    CHECK(after[k].width == doctest::Approx(before[k].width));
    CHECK(after[k].digits.back().origin.x - after[k].digits.front().origin.x ==
          doctest::Approx(before[k].digits.back().origin.x - before[k].digits.front().origin.x));
    CHECK(pulled.numerals->placed[k].center_s ==
          doctest::Approx(slack.numerals->placed[k].center_s));
  }
}

}  // namespace swathe
