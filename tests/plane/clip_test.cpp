#include "plane/clip.hpp"

#include <doctest/doctest.h>

#include <bitset>
#include <cmath>
#include <numbers>
#include <random>
#include <utility>

using namespace swathe;
using std::numbers::pi;

namespace {

plane::Polygon square(FlatPoint lo, double side) {
  return {lo, {lo.x + side, lo.y}, {lo.x + side, lo.y + side}, {lo.x, lo.y + side}};
}

plane::Polygon round(FlatPoint center, double radius, int corners) {
  plane::Polygon points;
  for (int i = 0; i < corners; ++i) {
    points.push_back(center + radius * plane::direction(2 * pi * i / corners));
  }
  return points;
}

double perimeter(const plane::Polygon& polygon) {
  double sum = 0;
  FlatPoint last = polygon.back();
  for (const FlatPoint p : polygon) sum += apart(std::exchange(last, p), p);
  return sum;
}

/// Whole squares of 1 mm, painted by hand.
using Board = std::bitset<40 * 40>;

struct Painted {
  plane::Region region;
  Board board;
};

/// Overlapping rectangles with whole corners, some run round clockwise.
Painted rectangles(std::mt19937& rng) {
  Painted painted;
  std::uniform_int_distribution<int> corner(0, 39), count(1, 6);
  const bool clockwise = corner(rng) % 2 == 0;
  for (int n = count(rng); n > 0; --n) {
    int x0 = corner(rng), x1 = corner(rng), y0 = corner(rng), y1 = corner(rng);
    if (x0 > x1) std::swap(x0, x1);
    if (y0 > y1) std::swap(y0, y1);
    plane::Polygon p = {
        {x0 + 0.0, y0 + 0.0}, {x1 + 0.0, y0 + 0.0}, {x1 + 0.0, y1 + 0.0}, {x0 + 0.0, y1 + 0.0}};
    painted.region.push_back(clockwise ? plane::Polygon(p.rbegin(), p.rend()) : p);
    for (int y = y0; y < y1; ++y) {
      for (int x = x0; x < x1; ++x) painted.board.set(static_cast<std::size_t>(40 * y + x));
    }
  }
  return painted;
}

double squares(const Board& board) { return static_cast<double>(board.count()); }

}  // namespace

TEST_CASE("clip: areas agree with squares painted one by one") {
  std::mt19937 rng(4711);
  for (int i = 0; i < 500; ++i) {
    const Painted a = rectangles(rng), b = rectangles(rng);
    CHECK(area(unite(a.region)) == doctest::Approx(squares(a.board)));
    CHECK(area(unite(unite(a.region), unite(b.region))) ==
          doctest::Approx(squares(a.board | b.board)));
    CHECK(area(intersect(a.region, b.region)) == doctest::Approx(squares(a.board & b.board)));
    CHECK(area(subtract(a.region, b.region)) == doctest::Approx(squares(a.board & ~b.board)));
  }
}

TEST_CASE("clip: the lens of two circles") {
  // Source: area of the lens of two unit circles a distance d apart: 2 acos(d/2) - d/2 sqrt(4 -
  // d^2); Weisstein, Circle-Circle Intersection, MathWorld, equation (14).
  const double d = 0.7, r = 50;
  const plane::Region a = {round({}, r, 4000)}, b = {round({d * r, 0}, r, 4000)};
  const double lens = r * r * (2 * std::acos(d / 2) - d / 2 * std::sqrt(4 - d * d));
  CHECK(area(intersect(a, b)) == doctest::Approx(lens).epsilon(1e-5));
  CHECK(area(unite(a, b)) == doctest::Approx(2 * pi * r * r - lens).epsilon(1e-5));
}

TEST_CASE("clip: outer outlines run counter-clockwise, holes clockwise, in a fixed order") {
  const plane::Region holed =
      plane::subtract({square({0, 0}, 100)}, {square({60, 10}, 20), square({10, 10}, 20)});
  REQUIRE(holed.size() == 3);
  CHECK(area(holed[0]) > 0);
  CHECK(area(holed[1]) < 0);
  CHECK(area(holed[2]) < 0);
  CHECK(holed[1][0] == FlatPoint{10, 10});
  CHECK(holed[2][0] == FlatPoint{60, 10});
  const plane::Region with_island = unite(holed, {square({65, 15}, 5), square({-50, 50}, 10)});
  REQUIRE(with_island.size() == 5);
  CHECK(area(with_island[3]) == doctest::Approx(25));  // in the hole it follows
  CHECK(with_island[4][0] == FlatPoint{-50, 50});
  // The order in which they come in does not matter.
  plane::Region shuffled = {with_island[4], with_island[2], with_island[0], with_island[3],
                            with_island[1]};
  CHECK(unite(shuffled) == with_island);
}

TEST_CASE("clip: what is smaller than the grid goes") {
  CHECK(plane::unite({square({0, 0}, 0.0004)}).empty());
  CHECK(plane::unite({square({0, 0}, 0.0004)}, 1e-6).size() == 1);
  CHECK(unite(plane::Region{}).empty());
}

TEST_CASE("offset (1): a convex outline grows by Steiner's formula") {
  for (const plane::Polygon& drawn :
       {square({-3, 8}, 40), round({5, 5}, 30, 7), plane::Polygon{{0, 0}, {90, 5}, {20, 60}}}) {
    const plane::Polygon convex = plane::unite({drawn})[0];  // on the grid
    for (const double r : {0.5, 3.0, 12.7}) {
      const double steiner = area(convex) + perimeter(convex) * r + pi * r * r;
      const double got = plane::area(plane::offset({convex}, r));
      // The arcs' chords stay within 0.005 mm of them, inside; corners go to the grid of 1 um.
      const double rounding = 0.5 * plane::kClipGrid * (perimeter(convex) + 2 * pi * r);
      CHECK(got < steiner + rounding);
      CHECK(got > steiner - 2 * pi * r * 0.005 - rounding);
    }
  }
}

TEST_CASE("offset (2): shrinking undoes growing") {
  for (const plane::Join join : {plane::Join::Round, plane::Join::Mitre}) {
    const plane::Region back = offset(offset({square({0, 0}, 40)}, 5, join), -5, join);
    CHECK(area(back) == doctest::Approx(1600).epsilon(1e-4));
  }
}

TEST_CASE("offset: mitred corners meet, holes close") {
  const plane::Region grown = offset({square({0, 0}, 40)}, 5, plane::Join::Mitre);
  REQUIRE(grown.size() == 1);
  CHECK(area(grown) == doctest::Approx(2500));
  CHECK(grown[0].size() == 4);
  const plane::Region frame = plane::subtract({square({0, 0}, 40)}, {square({15, 15}, 10)});
  CHECK(offset(frame, 4.9).size() == 2);
  CHECK(offset(frame, 5.1).size() == 1);
  CHECK(area(offset(frame, -3, plane::Join::Mitre)) == doctest::Approx(34 * 34 - 16 * 16));
  CHECK(offset(frame, -7.6, plane::Join::Mitre).empty());
}
