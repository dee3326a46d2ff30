#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "support/jobs.hpp"
#include "swathe/pattern.hpp"

// Corners of butted noodles, their hollows filled with foam or left open. All figures are worked
// out by hand beside them.
namespace swathe {
namespace {

constexpr double kInch = 25.4;

Pattern pattern_of(const Job& job) {
  const auto pattern = make_pattern(test::wraps_of(job)[0], job);
  REQUIRE(pattern.has_value());
  return *pattern;
}

Job worked(bool filled) {
  Job job = test::worked_job();  // boards 3/4 by 5 in, two noodles of 2 1/2 in, cloth of no size
  job.padding.filled = filled;
  return job;
}

/// Where the notch has its full width: the upright sides' inner ends.
double full_width_at(const plane::Polygon& notch) {
  const plane::Box box = bounds(notch);
  double u = 1e300;
  for (const FlatPoint p : notch)
    if (std::abs(p.x - box.lo.x) < 1e-6) u = std::min(u, std::abs(p.y));
  return u;
}

}  // namespace

TEST_CASE("a filled corner has cloth for a square front: r (2 - pi/2) more, above and below") {
  const PatternCorner open = pattern_of(worked(false)).corners[0];
  const PatternCorner filled = pattern_of(worked(true)).corners[0];
  // Round: 1.25 in of flat, a quarter of a round of r = 1.25 in (1.96350), 2 in of top: 5.21350 in.
  CHECK(full_width_at(open.notch_top) / kInch == doctest::Approx(5.21350).epsilon(1e-6));
  // Square: 2.5 in of front, 2.5 of noodle and 0.75 of board: 5.75 in. 0.5365 in more are 0.42920
  // r.
  for (const plane::Polygon* notch : {&filled.notch_top, &filled.notch_bottom})
    CHECK(full_width_at(*notch) / kInch == doctest::Approx(5.75).epsilon(1e-9));
  // The cut begins cut_clear = 1/4 in behind the padding, 1/2 in before the board's back edge.
  CHECK(bounds(filled.notch_top).lo.y / kInch == doctest::Approx(5.25));
  CHECK(bounds(open.notch_top).lo.y / kInch == doctest::Approx(4.71350).epsilon(1e-6));
  // As wide as before: 3 1/4 in of depth and 1/8 in of setback, twice.
  CHECK(bounds(filled.notch_top).width() / kInch == doctest::Approx(6.75));
}

TEST_CASE("a filled corner's pleats are straight, at 45 degrees from the front's edge") {
  const Pattern pattern = pattern_of(worked(true));
  for (const DartPoint& p : pattern.corners[0].dart)
    CHECK(p.half_width / kInch == doctest::Approx(std::max(0.0, std::abs(p.u) / kInch - 2.5)));
  CHECK(pattern.corners[0].dart.size() >= 2 * 33);
  int pleats = 0;
  for (const PleatLine& pleat : pattern.pleats) {
    const FlatPoint point = pleat.path.vertices.front().at;
    CHECK(std::abs(point.y) / kInch == doctest::Approx(2.5));
    ++pleats;
  }
  CHECK(pleats == 8);  // two corners, above and below, left and right
}

// 3.375 in from the corner line the notch ends; the cloth settles on the round within one noodle.
TEST_CASE("beside a filled corner the board's edge and the staples come back to their line") {
  const Pattern pattern = pattern_of(worked(true));
  const double corner = pattern.corners[0].s;
  double at_notch = 0, settled = 1e300;
  for (const NamedLine& line : pattern.lines)
    if (line.what == NamedLine::What::BackEdge && line.from.y > 0)
      for (const FlatPoint p : {line.from, line.to}) {
        if (std::abs(p.x - (corner - 3.375 * kInch)) < 1e-6) at_notch = p.y;
        if (std::abs(p.x - (corner - 5.875 * kInch)) < 1e-6) settled = p.y;
      }
  CHECK(at_notch / kInch == doctest::Approx(5.75));
  CHECK(settled / kInch == doctest::Approx(5.21350).epsilon(1e-6));
  // The staples nearest the corner stand 4.25 in from its line: 0.875 of the 2.5 in are behind
  // them, 0.65 of 0.53650 in is left, and they are 1 in from the edge.
  int nearest = 0;
  for (const Staple& staple : pattern.staples)
    if (std::abs(std::abs(staple.at.x - corner) - 4.25 * kInch) < 1e-6) {
      CHECK(std::abs(staple.at.y) / kInch ==
            doctest::Approx(5.21350 + 1.0 + 0.65 * 0.53650).epsilon(1e-5));
      ++nearest;
    }
  CHECK(nearest == 4);
  // The cloth is no wider for it: the flap gives.
  CHECK(pattern.cloth_width == doctest::Approx(pattern_of(worked(false)).cloth_width));
  CHECK(taken_at_corners(test::wraps_of(worked(false))[0], worked(false).cloth, corner) == 0.0);
}

}  // namespace swathe
