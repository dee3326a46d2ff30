#include <doctest/doctest.h>

#include <algorithm>
#include <numbers>

#include "support/drawn.hpp"
#include "swathe/plane.hpp"

namespace swathe {
namespace {

constexpr double kPi = std::numbers::pi;

double belt(std::vector<plane::Disc> discs) { return girth(hull_of_discs(discs)); }

TEST_CASE("belts round two pulleys") {
  // Encyclopaedia Britannica, 11th ed. (1911), vol. 17, "Mechanics", Applied Mechanics section 59:
  // open belt. Pulleys 1600 and 500 mm, 12 m apart: published 27.32 m, exact 27.323885 m.
  CHECK(belt({{{0, 0}, 800}, {{12000, 0}, 250}}) == doctest::Approx(27323.885).epsilon(1e-8));
  // Pulleys 10 and 5, 20 apart: exact 63.874854.
  CHECK(belt({{{0, 0}, 5}, {{0, 20}, 2.5}}) == doctest::Approx(63.874854).epsilon(1e-8));
  // Pulleys 105 and 393 mm, 697 mm apart: 2.206114 m (published 2.2 m).
  CHECK(belt({{{3, 4}, 52.5}, {{700, 4}, 196.5}}) == doctest::Approx(2206.114).epsilon(1e-6));
  // Pulleys 450 and 200 mm, 1.95 m apart, open: 4.929033 m.
  CHECK(belt({{{0, 0}, 225}, {{-1950, 0}, 100}}) == doctest::Approx(4929.033).epsilon(1e-7));
}

TEST_CASE("cords round nails and straps round pipes") {
  // Published puzzle "Rope": four nails in a square of side 2, heads of radius 1: 14.28 (8 + 2 pi).
  CHECK(belt({{{0, 0}, 1}, {{2, 0}, 1}, {{2, 2}, 1}, {{0, 2}, 1}}) ==
        doctest::Approx(14.283185).epsilon(1e-7));
  // A 3-4-5 triangle with standoff 1: 12 + 2 pi (published 18).
  CHECK(belt({{{0, 0}, 1}, {{4, 0}, 1}, {{0, 3}, 1}}) == doctest::Approx(18.283185).epsilon(1e-7));
  // Three 12 in pipes strapped: 36 + 12 pi.
  CHECK(belt({{{0, 0}, 6}, {{12, 0}, 6}, {{6, 6 * std::sqrt(3.0)}, 6}}) ==
        doctest::Approx(73.699112).epsilon(1e-7));
  // Three unit-diameter circles: 3 + pi = 6.14.
  CHECK(belt({{{0, 0}, 0.5}, {{1, 0}, 0.5}, {{0.5, 0.5 * std::sqrt(3.0)}, 0.5}}) ==
        doctest::Approx(6.141593).epsilon(1e-6));
}

TEST_CASE("hull: what touches a disc from within, or is there twice, adds nothing") {
  // A half-round front, 5 high, before a board 3 thick, which hides its back: 2 x 3 + 5 + 5 pi / 2.
  const std::vector<plane::Disc> board = {{{0, 0}, 0}, {{3, 0}, 0}, {{3, 5}, 0}, {{0, 5}, 0}};
  std::vector<plane::Disc> discs = {{{3, 2.5}, 2.5}, {{3, 2.5}, 2.5}};
  discs.insert(discs.end(), board.begin(), board.end());
  const double length = 6 + 5 + 2.5 * kPi;
  CHECK(belt(discs) == doctest::Approx(length).epsilon(1e-12));
  std::reverse(discs.begin(), discs.end());
  CHECK(belt(discs) == doctest::Approx(length).epsilon(1e-12));
  for (plane::Disc& disc : discs) disc.radius += 0.01;
  CHECK(belt(discs) == doctest::Approx(length + 0.02 * kPi).epsilon(1e-12));
  CHECK(belt({{{1, 1}, 3}, {{2, 1}, 2}, {{1, 1}, 3}, {{1, -2}, 0}}) ==
        doctest::Approx(6 * kPi).epsilon(1e-12));
}

std::vector<plane::Disc> drawn_discs(std::mt19937_64& rng) {
  std::vector<plane::Disc> discs;
  const int count = std::uniform_int_distribution<int>(1, 9)(rng);
  for (int k = 0; k < count; ++k)
    discs.push_back({{test::drawn(rng, -100, 100), test::drawn(rng, -100, 100)},
                     k % 3 == 0 ? 0.0 : test::drawn(rng, 0, 60)});
  return discs;
}

TEST_CASE("hull (1) closes and turns once, (2) holds every disc") {
  test::for_drawn_cases("hull-1-2", 500, [](std::mt19937_64& rng) {
    const std::vector<plane::Disc> discs = drawn_discs(rng);
    const std::vector<plane::HullPiece> hull = hull_of_discs(discs);
    double turned = 0.0;
    for (std::size_t k = 0; k < hull.size(); ++k) {
      turned += hull[k].turn;
      CHECK(apart(hull[k].to, hull[(k + 1) % hull.size()].from) < 1e-6);
      if (hull[k].turn != 0.0) continue;
      const FlatPoint out = plane::direction(hull[k].heading - kPi / 2);
      for (const plane::Disc& disc : discs)
        CHECK(dot(disc.center - hull[k].from, out) + disc.radius < 1e-6);
    }
    CHECK(turned == doctest::Approx(2 * kPi));
  });
}

TEST_CASE("hull (3) grows by 2 pi r: Steiner's formula") {
  test::for_drawn_cases("hull-3", 500, [](std::mt19937_64& rng) {
    std::vector<plane::Disc> discs = drawn_discs(rng);
    const double before = belt(discs), r = test::drawn(rng, 0, 20);
    for (plane::Disc& disc : discs) disc.radius += r;
    CHECK(belt(discs) == doctest::Approx(before + 2 * kPi * r).epsilon(1e-9));
  });
}

TEST_CASE("hull of sharp corners is the convex hull: perimeter of a scan in degrees") {
  // Second method: Cauchy's formula, the perimeter is the integral of the support function over all
  // directions.
  test::for_drawn_cases("hull-cauchy", 50, [](std::mt19937_64& rng) {
    const std::vector<plane::Disc> discs = drawn_discs(rng);
    constexpr int kSteps = 20000;
    double sum = 0.0;
    for (int k = 0; k < kSteps; ++k) {
      double support = -1e300;
      for (const plane::Disc& disc : discs)
        support = std::max(support,
                           dot(disc.center, plane::direction(2 * kPi * k / kSteps)) + disc.radius);
      sum += support;
    }
    CHECK(belt(discs) == doctest::Approx(sum * 2 * kPi / kSteps).epsilon(1e-5));
  });
}

}  // namespace
}  // namespace swathe
