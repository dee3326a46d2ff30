#include "plane/touching_circle.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "support/drawn.hpp"

using namespace swathe;

namespace {

/// Of a place to the right of a line; behind its back, less than zero.
double to_right_of(const plane::WholeLine& line, FlatPoint p) {
  return -cross(unit(line.to - line.from), p - line.from);
}

FlatPoint whole_point(std::mt19937_64& rng, double most) {
  return {std::round(test::drawn(rng, -most, most)), std::round(test::drawn(rng, -most, most))};
}

}  // namespace

// By hand: the triangle of sides 3, 4, 5 has an inscribed circle of radius 1, (3 + 4 - 5) / 2.
TEST_CASE("the circle in a triangle of sides 3, 4, 5") {
  const FlatPoint a{7, 2}, b{7, 5}, c{11, 2};
  const auto circle = plane::circle_touching({a, b}, {b, c}, {c, a});
  REQUIRE(circle);
  CHECK(circle->center.x == 8);
  CHECK(circle->center.y == 3);
  CHECK(circle->right == 9);
  // The other hand: the same center, the radius below zero.
  const auto turned = plane::circle_touching({a, c}, {c, b}, {b, a});
  REQUIRE(turned);
  CHECK(turned->center.x == 8);
  CHECK(turned->right == 7);
}

// By hand: a circle of radius r that touches both axes has its center at (r, r); through (9, 2)
// that is (r - 9)^2 + (r - 2)^2 = r^2, so r = 5 or 17. All moved by (100, 30).
TEST_CASE("the two circles through a point that touch two lines square to each other") {
  const plane::WholeLine x{{90, 30}, {120, 30}}, y{{100, 25}, {100, 75}};
  const auto nearer = circle_through({109, 32}, x, y, false);
  const auto further = circle_through({109, 32}, x, y, true);
  REQUIRE(nearer);
  REQUIRE(further);
  CHECK(nearer->center.x == doctest::Approx(105).epsilon(1e-15));
  CHECK(nearer->center.y == doctest::Approx(35).epsilon(1e-15));
  CHECK(nearer->right == doctest::Approx(110).epsilon(1e-15));
  CHECK(further->center.x == doctest::Approx(117).epsilon(1e-15));
  CHECK(further->center.y == doctest::Approx(47).epsilon(1e-15));
  CHECK(further->right == doctest::Approx(134).epsilon(1e-15));
}

TEST_CASE("no circle is told where two doubles' digits do not suffice") {
  CHECK(!plane::circle_touching({{0, 0}, {9, 0}}, {{3, 5}, {8, 5}}, {{2, 9}, {7, 9}}));
  CHECK(!plane::circle_through({2, 3}, {{0, 0}, {9, 0}}, {{3, 5}, {8, 5}}, true));
  // In truth the center is at x = 0, of which no share is small enough.
  CHECK(!plane::circle_touching({{3, -3}, {3, 3}}, {{3, 3}, {-3, 3}}, {{-3, 3}, {-3, -3}}));
}

// Held against what a touching circle is: as far from each.
TEST_CASE("drawn circles touch what they are said to touch") {
  test::for_drawn_cases("touching circles", 2000, [](std::mt19937_64& rng) {
    const double most = std::pow(10, test::drawn(rng, 2, 6));
    const auto line = [&] {
      return plane::WholeLine{whole_point(rng, most), whole_point(rng, most)};
    };
    const plane::WholeLine one = line(), two = line(), three = line();
    const FlatPoint point = whole_point(rng, most);
    // A place far away is itself rounded, to its 2^-53.
    const auto near = [&](double distance, double radius, FlatPoint center) {
      return std::abs(distance - radius) <= 1e-13 * (norm(center) + most);
    };
    if (const auto touching = circle_touching(one, two, three)) {
      const double radius = touching->right - touching->center.x;
      for (const plane::WholeLine& each : {one, two, three})
        CHECK(near(to_right_of(each, touching->center), radius, touching->center));
    }
    for (const bool further : {false, true}) {
      const auto through = circle_through(point, one, two, further);
      if (!through) continue;  // the point lies between the lines' other hands: no such circle
      const double radius = through->right - through->center.x;
      CHECK(near(apart(point, through->center), radius, through->center));
      CHECK(near(std::abs(to_right_of(one, through->center)), radius, through->center));
      CHECK(near(std::abs(to_right_of(two, through->center)), radius, through->center));
    }
  });
}
