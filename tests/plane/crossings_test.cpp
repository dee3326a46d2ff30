#include "plane/crossings.hpp"

#include <doctest/doctest.h>

#include <random>
#include <utility>

#include "support/drawn.hpp"

using namespace swathe;

namespace {

constexpr std::size_t kMany = 1000000;

plane::Polygon square(double lo, double hi) { return {{lo, lo}, {hi, lo}, {hi, hi}, {lo, hi}}; }

}  // namespace

TEST_CASE("crossings: none of outlines that unite() has made") {
  CHECK(plane::count_crossings({}, kMany) == 0);
  CHECK(plane::count_crossings({square(0, 10)}, kMany) == 0);
  CHECK(plane::count_crossings({square(0, 10), {{2, 2}, {2, 8}, {8, 8}, {8, 2}}}, kMany) == 0);
}

TEST_CASE("crossings: worked out by hand") {
  CHECK(plane::count_crossings({{{0, 0}, {10, 10}, {10, 0}, {0, 10}}}, kMany) ==
        1);  // an hourglass
  CHECK(plane::count_crossings({square(0, 10), square(5, 15)}, kMany) == 2);
  // Side by side: a whole edge in common, and each of its ends touches the edges round it.
  CHECK(plane::count_crossings({square(0, 10), {{10, 0}, {20, 0}, {20, 10}, {10, 10}}}, kMany) ==
        7);
  CHECK(plane::count_crossings({{{0, 0}, {10, 0}, {5, 0}}}, kMany) ==
        2);                                                        // folded flat, at two ends
  CHECK(plane::count_crossings({{{0, 0}, {10, 0}}}, kMany) >= 1);  // there and back
  // Closer than the grid is the same place.
  CHECK(plane::count_crossings({{{0, 0}, {10, 0}, {10.0001, 0.0001}, {10, 10}}}, kMany) == 0);
}

TEST_CASE("crossings: a star of n corners, each joined to the one k further on") {
  // An edge parts k - 1 corners from the others, and two edges end in each of them: it crosses
  // 2 (k - 1) others, and each crossing belongs to two.
  for (const auto& [n, k] : {std::pair{5, 2}, {7, 3}, {11, 5}, {101, 50}}) {
    plane::Polygon star;
    for (int i = 0; i < n; ++i)
      star.push_back(100.0 * plane::direction(6.283185307179586 * i * k / n));
    CHECK(plane::count_crossings({star}, kMany) == static_cast<std::size_t>(n * (k - 1)));
    CHECK(plane::count_crossings({star}, 3) == 4);  // counting has ended
  }
}

TEST_CASE("crossings: as many as every pair by itself gives") {
  test::for_drawn_cases("crossings", 200, [](auto& rng) {
    std::uniform_int_distribution<int> place(0, 12), count(3, 14);
    plane::Polygon polygon(static_cast<std::size_t>(count(rng)));
    for (FlatPoint& p : polygon)
      p = {static_cast<double>(place(rng)), static_cast<double>(place(rng))};
    // The plain way: on a grid of whole numbers, halves are exact in doubles.
    std::erase_if(polygon, [&, last = FlatPoint{-1, -1}](FlatPoint p) mutable {
      const bool same = p == last;
      last = p;
      return same;
    });
    while (polygon.size() > 1 && polygon.front() == polygon.back()) polygon.pop_back();
    const std::size_t n = polygon.size();
    if (n < 3) return;
    const auto at = [&](std::size_t i) { return polygon[i % n]; };
    const auto on = [](FlatPoint a, FlatPoint b, FlatPoint p) {
      return cross(b - a, p - a) == 0 && dot(p - a, p - b) <= 0;
    };
    std::size_t expected = 0;
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = i + 1; j < n; ++j) {
        const FlatPoint a = at(i), b = at(i + 1), c = at(j), d = at(j + 1);
        const bool follows = j == i + 1, precedes = i == 0 && j == n - 1;
        bool meets = cross(b - a, c - a) * cross(b - a, d - a) < 0 &&
                     cross(d - c, a - c) * cross(d - c, b - c) < 0;
        // Neighbors share a corner: only another end on the edge is a meeting.
        meets = meets || (on(a, b, c) && !follows) || (on(a, b, d) && !precedes) ||
                (on(c, d, a) && !precedes) || (on(c, d, b) && !follows);
        expected += meets ? 1 : 0;
      }
    }
    CHECK(plane::count_crossings({polygon}, kMany, 1.0) == expected);
  });
}
