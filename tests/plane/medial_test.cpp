#include "plane/medial.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <random>
#include <utility>

#include "plane/clip.hpp"

using namespace swathe;
using std::numbers::pi;

namespace {

double to_edge(FlatPoint p, FlatPoint a, FlatPoint b) {
  const double share = std::clamp(dot(p - a, b - a) / dot(b - a, b - a), 0.0, 1.0);
  return apart(p, a + share * (b - a));
}

/// The distance to the nearest of all edges, one after the other.
double to_outline(FlatPoint p, const plane::Region& region) {
  double least = 1e300;
  for (const plane::Polygon& polygon : region) {
    FlatPoint a = polygon.back();
    for (const FlatPoint b : polygon) least = std::min(least, to_edge(p, std::exchange(a, b), b));
  }
  return least;
}

/// Independent circuits of the axis: edges that join what was joined already.
int circuits(const plane::MedialAxis& axis) {
  std::vector<std::size_t> parent(axis.junctions);
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  const auto root = [&](std::size_t p) {
    while (parent[p] != p) p = parent[p];
    return p;
  };
  int count = 0;
  for (const plane::MedialEdge& edge : axis.edges) {
    const std::size_t a = root(edge.from), b = root(edge.to);
    if (a == b) ++count;
    parent[a] = b;
  }
  return count;
}

void check_every_point(const plane::Region& region) {
  const plane::MedialAxis axis = medial_axis(region, 0.5);
  REQUIRE(!axis.edges.empty());
  for (const plane::MedialEdge& edge : axis.edges) {
    for (std::size_t i = 0; i < edge.points.size(); ++i) {
      const plane::MedialPoint& p = edge.points[i];
      CHECK(p.radius == doctest::Approx(to_outline(p.at, region)).epsilon(1e-6).scale(100));
      CHECK(std::abs(apart(p.at, p.touch_a) - apart(p.at, p.touch_b)) < 2e-4);
      CHECK(to_outline(p.touch_a, region) < 2e-4);
      CHECK(to_outline(p.touch_b, region) < 2e-4);
      if (p.radius > 1e-3) CHECK(contains(region, p.at));
      if (i > 0) CHECK(apart(p.at, edge.points[i - 1].at) < 3 * 0.5);
    }
  }
}

}  // namespace

TEST_CASE("medial axis: of a rectangle") {
  // By hand: a line in the middle, half the height from either end, and a bisector to each corner.
  const plane::MedialAxis axis = plane::medial_axis({{{0, 0}, {100, 0}, {100, 40}, {0, 40}}}, 1000);
  REQUIRE(axis.edges.size() == 5);
  int middle = 0;
  for (const plane::MedialEdge& edge : axis.edges) {
    const plane::MedialPoint &a = edge.points.front(), &b = edge.points.back();
    if (a.radius == doctest::Approx(20) && b.radius == doctest::Approx(20)) {
      ++middle;
      CHECK(apart(a.at, b.at) == doctest::Approx(60));
      CHECK(a.opposed() == doctest::Approx(1));
    } else {
      CHECK(apart(a.at, b.at) == doctest::Approx(20 * std::sqrt(2.0)));
      CHECK(std::min(a.radius, b.radius) == doctest::Approx(0));
      // Two edges square to each other: the chord of a quarter turn.
      CHECK(std::max(a.opposed(), b.opposed()) == doctest::Approx(std::sqrt(0.5)));
    }
  }
  CHECK(middle == 1);
  CHECK(plane::medial_axis({{{0, 0}, {100, 0}, {100, 40}, {0, 40}}}, 1000, 0.8).edges.size() == 1);
  CHECK(plane::medial_axis({}, 1).edges.empty());
}

TEST_CASE("medial axis: between a corner and an edge it is a parabola") {
  // The inner corner of an L at (30, 30) and its lower edge: y = (x - 30)^2 / 60 + 15.
  const plane::Region ell = {{{0, 0}, {100, 0}, {100, 30}, {30, 30}, {30, 100}, {0, 100}}};
  int on_it = 0;
  for (const plane::MedialEdge& edge : medial_axis(ell, 0.5).edges) {
    for (const plane::MedialPoint& p : edge.points) {
      if (p.at.x >= 29.9 || p.at.y >= p.at.x - 0.1 || p.at.y < 15) continue;
      ++on_it;
      CHECK(p.at.y == doctest::Approx((p.at.x - 30) * (p.at.x - 30) / 60 + 15).epsilon(1e-6));
    }
  }
  CHECK(on_it > 10);
}

TEST_CASE("medial axis: every point lies where all edges, tried in turn, say") {
  std::mt19937 rng(20486);
  std::uniform_real_distribution<double> radius(12, 60), place(0, 100);
  std::uniform_int_distribution<int> corners(4, 40);
  for (int i = 0; i < 40; ++i) {
    const int n = corners(rng);
    plane::Polygon star;
    for (int k = 0; k < n; ++k) star.push_back(radius(rng) * plane::direction(2 * pi * k / n));
    const plane::Polygon hole = {{-4, -3}, {-3, 5}, {4, 4}};  // clockwise
    const plane::Region region = i % 2 ? plane::unite({star}) : plane::unite({star, hole});
    CAPTURE(i);
    check_every_point(region);
    // The axis shrinks out of the region without tearing: as many ways round as there are holes.
    // Source: Lieutier, Any open bounded subset of R^n has the same homotopy type as its medial
    // axis, Computer-Aided Design 36 (2004).
    CHECK(circuits(medial_axis(region, 0.5)) == (i % 2 ? 0 : 1));
  }
  for (int i = 0; i < 40; ++i) {  // outlines that cross themselves, united
    plane::Polygon tangle;
    for (int k = corners(rng); k > 0; --k) tangle.push_back({place(rng), place(rng)});
    CAPTURE(i);
    const plane::Region region = plane::unite({tangle});
    if (!region.empty()) check_every_point(region);
  }
}
