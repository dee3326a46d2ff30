#include <doctest/doctest.h>

#include <numbers>

#include "support/drawn.hpp"
#include "swathe/plane.hpp"

namespace swathe {
namespace {

constexpr double kPi = std::numbers::pi;

double to_edge(FlatPoint p, FlatPoint a, FlatPoint b) {
  // Second method: by the nearest of many points of the edge.
  double least = apart(p, b);
  for (int k = 0; k < 2000; ++k) least = std::min(least, apart(p, a + (k / 2000.0) * (b - a)));
  return least;
}

TEST_CASE("thinned: every point left out is within the tolerance of the edge that passes it") {
  test::for_drawn_cases("thinned", 60, [](std::mt19937_64& rng) {
    plane::Polygon polygon;
    const int count = 3 + static_cast<int>(rng() % 150);
    const double wave = test::drawn(rng, 0, 0.4), size = test::drawn(rng, 1, 60);
    for (int k = 0; k < count; ++k) {
      const double turn = 2 * kPi * k / count;
      polygon.push_back(size * (1 + wave * std::sin(5 * turn)) * plane::direction(turn));
    }
    const double tolerance = test::drawn(rng, 0.001, 0.2);
    const plane::Polygon thin = thinned(polygon, tolerance);
    REQUIRE(thin.size() >= 3);
    REQUIRE(thin.front() == polygon.front());
    std::size_t edge = 0;  // the last point of the thin outline that was passed
    for (const FlatPoint p : polygon) {
      if (edge + 1 < thin.size() && p == thin[edge + 1]) ++edge;
      CHECK(to_edge(p, thin[edge], thin[(edge + 1) % thin.size()]) < tolerance + size / 1000);
    }
    CHECK(edge + 1 == thin.size());  // its points are the polygon's, in order
  });
}

TEST_CASE("thinned: a circle keeps about as many points as its arrow height asks for") {
  // The arrow height of a chord over the angle t is r (1 - cos(t / 2)): at 0.02 mm on 50 mm the
  // angle is 3.24 degrees at most, so at least 112 chords; halving again and again makes fewer than
  // twice as many.
  plane::Polygon circle;
  for (int k = 0; k < 4096; ++k) circle.push_back(50.0 * plane::direction(2 * kPi * k / 4096));
  const std::size_t points = thinned(circle, 0.02).size();
  CHECK(points >= 112);
  CHECK(points < 224);
}

TEST_CASE("thinned: points on straight edges go, corners stay") {
  const plane::Polygon dense = {{0, 0}, {5, 0}, {10, 0}, {10, 1}, {10, 7}, {4, 7}, {0, 7}, {0, 2}};
  CHECK(thinned(dense, 1e-6) == plane::Polygon{{0, 0}, {10, 0}, {10, 7}, {0, 7}});
  const plane::Polygon tiny = {{0, 0}, {0.01, 0}, {0.01, 0.01}, {0, 0.01}};
  CHECK(thinned(tiny, 1.0) == tiny);  // never less than an area
}

}  // namespace
}  // namespace swathe
