#include "support/drawn_jobs.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "pattern/fastening.hpp"
#include "rules/practice.hpp"

// Promises that hold for every job that stands, whatever its frame.
namespace swathe {
namespace {

void check_same(const plane::Polygon& a, const plane::Polygon& b, double tolerance) {
  REQUIRE(a.size() == b.size());
  double off = 0.0;
  for (std::size_t k = 0; k < a.size(); ++k) off = std::max(off, apart(a[k], b[k]));
  CHECK(off < tolerance);
}

TEST_CASE("drawn jobs: most stand, outlines are simple, staples keep out of keep-outs") {
  int stood_jobs = 0;
  test::for_drawn_cases("drawn-outline", test::kDrawnJobs, [&](std::mt19937_64& rng) {
    const Job job = test::drawn_job(rng);
    const auto stood = test::stand(job);
    if (!stood) return;
    ++stood_jobs;
    for (std::size_t k = 0; k < stood->patterns.size(); ++k) {
      const Pattern& pattern = stood->patterns[k];
      CHECK(is_simple(pattern.outline));
      CHECK(area(pattern.outline) > 0.0);
      CHECK(std::ranges::all_of(pattern.staples, [&](const Staple& staple) {
        return contains(pattern.outline, staple.at);
      }));
      for (const Staple& staple : pattern.staples) {
        for (const RunCorner& corner : stood->wraps[k].run().corners)
          CHECK(std::abs(staple.at.x - corner.s) >
                corner.past + practice::kStaplerReach.mm() - 1e-6);
      }
    }
  });
  CHECK(stood_jobs > test::kDrawnJobs / 4);
}

TEST_CASE("drawn jobs: turning the frame changes no pattern") {
  test::for_drawn_cases("drawn-turn", test::kDrawnJobs, [](std::mt19937_64& rng) {
    Job job = test::drawn_job(rng);
    const auto before = test::stand(job);
    const plane::Placement turn{
        false, test::drawn(rng, 0, 6.28), {test::drawn(rng, -900, 900), 77}};
    for (FlatPoint& corner : job.frame.corners) corner = turn(corner);
    const auto after = test::stand(job);
    REQUIRE(before.has_value() == after.has_value());
    if (!before) return;
    for (std::size_t k = 0; k < before->patterns.size(); ++k)
      check_same(before->patterns[k].outline, after->patterns[k].outline, 1e-6);
  });
}

TEST_CASE("drawn jobs: mirroring the frame mirrors the patterns") {
  test::for_drawn_cases("drawn-mirror", test::kDrawnJobs, [](std::mt19937_64& rng) {
    Job job = test::drawn_job(rng);
    const auto before = test::stand(job);
    std::vector<FlatPoint> corners(job.frame.corners.rbegin(), job.frame.corners.rend());
    for (FlatPoint& corner : corners) corner.x = -corner.x;
    // Side k of the mirrored frame runs between the mirrored corners of side n - 2 - k.
    const std::size_t n = corners.size();
    std::vector<std::string> sides(n);
    for (std::size_t k = 0; k < n; ++k) sides[k] = job.frame.sides[(2 * n - 2 - k) % n];
    job.frame.corners = corners;
    job.frame.sides = sides;
    for (BumperKeys& bumper : job.bumpers) {
      std::swap(bumper.from, bumper.to);
      for (RunEnd* end : {&bumper.from, &bumper.to})
        end->at = RunEnd::Share{1.0 - std::get<RunEnd::Share>(end->at).fraction};
    }
    const auto after = test::stand(job);
    REQUIRE(before.has_value() == after.has_value());
    if (!before) return;
    for (std::size_t k = 0; k < before->patterns.size(); ++k) {
      const Pattern& was = before->patterns[k];
      const plane::Placement mirror{true, 0.0, {was.length, 0}};
      const plane::Polygon now = mirror(was.outline);
      CHECK(area(now) == doctest::Approx(area(after->patterns[k].outline)).epsilon(1e-9));
      CHECK(bounds(now).lo.x == doctest::Approx(bounds(after->patterns[k].outline).lo.x));
      for (const FlatPoint p : after->patterns[k].outline) {
        double nearest = 1e300;
        for (const FlatPoint q : now) nearest = std::min(nearest, apart(p, q));
        CHECK(nearest < 1e-6);
      }
    }
  });
}

TEST_CASE("drawn jobs: twice every length gives twice the section and the runs") {
  test::for_drawn_cases("drawn-scale", test::kDrawnJobs, [](std::mt19937_64& rng) {
    Job job = test::drawn_job(rng);
    const auto before = test::stand(job);
    const double k = test::drawn(rng, 0.8, 1.6);
    for (FlatPoint& corner : job.frame.corners) corner = k * corner;
    const auto scale = [&](auto&... lengths) { ((lengths = k * lengths), ...); };
    scale(job.frame.fit, job.boards.thickness, job.boards.height, job.padding.diameter,
          job.padding.depth, job.padding.height, job.padding.edge_radius, job.cloth.thickness,
          job.cloth.flap, job.cloth.staple_line, job.cloth.setback, job.cloth.seam,
          job.cloth.cut_clear, job.cloth.end_reach);
    for (BumperKeys& bumper : job.bumpers) scale(bumper.end_clearance);
    const auto after = test::stand(job);
    if (!before || !after) return;  // makers' own distances (a stapler's nose) do not scale
    for (std::size_t b = 0; b < before->wraps.size(); ++b) {
      const Wrap &was = before->wraps[b], &now = after->wraps[b];
      CHECK(now.section().closed_girth_mm() ==
            doctest::Approx(k * was.section().closed_girth_mm()));
      CHECK(now.run().length == doctest::Approx(k * was.run().length));
      plane::Polygon outline = before->patterns[b].outline;
      for (FlatPoint& p : outline) p = k * p;
      check_same(outline, after->patterns[b].outline, 1e-5);
    }
  });
}

TEST_CASE("drawn jobs: cloth between the back edges less the darts is the surface") {
  test::for_drawn_cases("drawn-area", test::kDrawnJobs, [](std::mt19937_64& rng) {
    const auto stood = test::stand(test::drawn_job(rng));
    if (!stood) return;
    // Second method: level lines in space, chord by chord, times the step round the girth.
    const Wrap& wrap = stood->wraps[0];
    const Section& section = wrap.section();
    constexpr int kLevels = 200, kChords = 30;  // sides are straight, bends are not
    double sum = 0.0, worst_bend = 0.0;
    const double rise = (section.back_edge_top() - section.back_edge_bottom()) / kLevels;
    for (int k = 0; k < kLevels; ++k) {
      const double u = section.back_edge_bottom() + rise * (k + 0.5);
      double level = 0.0;
      std::optional<SpacePoint> last;
      const auto walk = [&](double from, double to, int chords) {
        for (int c = 0; c <= chords; ++c) {
          const auto at = wrap.at({from + (to - from) * c / chords, u});
          if (!at) continue;
          if (last) level += apart(*last, *at);
          last = at;
        }
      };
      double from = 0.0;
      for (const RunCorner& corner : wrap.run().corners) {
        const double h = wrap.dart(corner, u);
        const double bend =
            std::max(0.0, section.at(u).d - section.thickness_mm()) * 0.5 * corner.turn;
        walk(from, corner.s - h - bend, 1);
        const int chords = bend > 0.0 ? kChords : 1;
        walk(corner.s - h - bend, corner.s - h, chords);
        walk(corner.s + h, corner.s + h + bend, chords);
        from = corner.s + h + bend;
        worst_bend = std::max(worst_bend, corner.turn);
      }
      walk(from, wrap.run().length, 1);
      sum += level * rise;
    }
    CHECK(wrap.surface_area() == doctest::Approx(sum).epsilon(5e-4));
  });
}

}  // namespace
}  // namespace swathe
