#include "sheet/cover_ordinates.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "draw/ordinates.hpp"
#include "sheet/pattern_drawing.hpp"
#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "support/made_by_hand.hpp"

namespace swathe {
namespace {

constexpr double kInch = 25.4;

Job drawn_job(std::mt19937_64& rng) {
  Job job = test::demo_job();
  job.frame = test::rectangle_frame(test::drawn(rng, 450, 1100), test::drawn(rng, 450, 1100));
  job.padding.diameter = mm(test::drawn(rng, 50, 70));
  job.paper.face = rng() % 2 == 0 ? PaperFace::Inside : PaperFace::Outside;
  job.units = rng() % 2 == 0 ? Units::Inches : Units::Millimeters;
  job.number.clear();
  return job;
}

bool has(const std::vector<Running>& list, double at) {
  return std::ranges::any_of(list, [&](const Running& r) { return std::abs(r.at_mm - at) < 0.02; });
}

TEST_CASE("running dimensions (1): what is printed, read again, is the model within half a step") {
  // Half of 1/16 in is 1/32 in; half a millimeter for the others. Figures are told from the datum,
  // so the last is as near as the first.
  test::for_drawn_cases("running-print", 60, [](std::mt19937_64& rng) {
    const Job job = drawn_job(rng);
    const Made made = test::made_by_hand(job);
    const double half = job.units == Units::Inches ? kInch / 32 : 0.5;
    for (std::size_t b = 0; b < 2; ++b) {
      const RunningDimensions all = running_dimensions(made, b);
      for (const auto* list : {&all.along, &all.across})
        for (const Running& running : *list) {
          const auto read = parse_length(dimension(mm(running.at_mm), job.units), job.units);
          REQUIRE(read.has_value());
          CHECK(std::abs(read->mm() - running.at_mm) <= half + 1e-6);
        }
    }
  });
}

TEST_CASE("running dimensions (2): every place of the pattern has its figure") {
  test::for_drawn_cases("running-complete", 40, [](std::mt19937_64& rng) {
    const Made made = test::made_by_hand(drawn_job(rng));
    for (std::size_t b = 0; b < 2; ++b) {
      const Pattern& pattern = made.patterns[b];
      const plane::Placement place = pattern_placement(made, b, {0, 0});
      const RunningDimensions all = running_dimensions(made, b);
      // Every corner of the cut outline can be found with the two rows of figures.
      for (const FlatPoint p : pattern.outline) {
        CHECK(has(all.along, place(p).x));
        CHECK(has(all.across, place(p).y));
      }
      for (const MatchMark& mark : pattern.marks) CHECK(has(all.along, place(mark.at).x));
      for (const BracketOnPattern& bracket : pattern.brackets)
        for (const Punch& hole : bracket.holes) {
          CHECK(has(all.along, place(hole.at).x));
          CHECK(has(all.across, place(hole.at).y));
        }
      for (const plane::Path& snip : pattern.snips)
        CHECK(has(all.across, place(snip.vertices.front().at).y));
    }
  });
}

TEST_CASE("running dimensions start at the datum and rise") {
  const Made made = test::made_by_hand(test::demo_job());
  for (std::size_t b = 0; b < 2; ++b) {
    const RunningDimensions all = running_dimensions(made, b);
    for (const auto* list : {&all.along, &all.across}) {
      REQUIRE(list->size() > 5);
      CHECK(list->front().at_mm == doctest::Approx(0).epsilon(1e-9));
      CHECK(std::ranges::is_sorted(
          *list, [](const Running& p, const Running& q) { return p.at_mm < q.at_mm - 0.02; }));
    }
    CHECK(all.along.back().at_mm == doctest::Approx(made.patterns[b].cloth_length));
    CHECK(all.across.back().at_mm == doctest::Approx(made.patterns[b].cloth_width));
  }
}

TEST_CASE(
    "running dimensions: the corner lines of a worked half stand where plain arithmetic puts "
    "them") {
  // Worked by hand: half front W/2 = 14 in, board 0.75 in and noodle 2.5 in: depth 3.25 in, the
  // front line runs E = d_max tan 45 deg = 3.25 in past the corner; clearance 1/4 in; cloth 0.
  // End face to the corner line: 14 + 3.25 - 0.25 = 17 in. Tongue: 3.25 + 2 = 5.25 in.
  Job job = test::worked_job();
  job.paper.face = PaperFace::Outside;
  const Made made = test::made_by_hand(job);
  const RunningDimensions all = running_dimensions(made, 0);
  CHECK(has(all.along, 5.25 * kInch));
  CHECK(has(all.along, (5.25 + 17.0) * kInch));
  CHECK(has(all.along, (5.25 + 17.0 + 30.0 + 6.5) * kInch));
}

TEST_CASE("spread: labels keep their distance and their order, and move as little as can be") {
  test::for_drawn_cases("spread", 200, [](std::mt19937_64& rng) {
    std::vector<double> targets;
    for (int k = 0; k < 8; ++k) targets.push_back(test::drawn(rng, 0, 100));
    std::ranges::sort(targets);
    constexpr double kPitch = 9.0;
    const std::vector<double> places = spread(targets, kPitch, 0, 100);
    REQUIRE(places.size() == targets.size());
    const auto cost = [&](const std::vector<double>& at) {
      double sum = 0;
      for (std::size_t k = 0; k < at.size(); ++k)
        sum += (at[k] - targets[k]) * (at[k] - targets[k]);
      return sum;
    };
    const auto allowed = [&](const std::vector<double>& at) {
      for (std::size_t k = 0; k < at.size(); ++k) {
        if (at[k] < -1e-9 || at[k] > 100 + 1e-9) return false;
        if (k > 0 && at[k] - at[k - 1] < kPitch - 1e-9) return false;
      }
      return true;
    };
    CHECK(allowed(places));
    // No allowed small step of neighbors together does better (the problem is convex).
    for (std::size_t a = 0; a < places.size(); ++a)
      for (std::size_t b = a + 1; b <= places.size(); ++b)
        for (const double step : {-0.05, 0.05}) {
          std::vector<double> other = places;
          for (std::size_t k = a; k < b; ++k) other[k] += step;
          if (allowed(other)) CHECK(cost(other) >= cost(places) - 1e-9);
        }
  });
}

}  // namespace
}  // namespace swathe
