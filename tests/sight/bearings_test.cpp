#include <doctest/doctest.h>

#include <numbers>

#include "support/drawn.hpp"
#include "swathe/sight.hpp"

namespace swathe {
namespace {

constexpr double kTurn = 2 * std::numbers::pi;

Bearings drawn_set(std::mt19937_64& rng) {
  Bearings set = Bearings::none();
  for (int k = 0; k < 3; ++k) {
    const double from = test::drawn(rng, -kTurn, kTurn);
    set = set | Bearings::arc(from, from + test::drawn(rng, 0, 2));
  }
  return rng() % 2 == 0 ? set : !set;
}

TEST_CASE("bearings: ways and back; 0 ahead, a quarter turn to the left") {
  CHECK(bearing_of({0, 1}) == doctest::Approx(0));
  CHECK(bearing_of({-1, 0}) == doctest::Approx(kTurn / 4));
  CHECK(bearing_of({0, -1}) == doctest::Approx(kTurn / 2));
  CHECK(bearing_of({1, 0}) == doctest::Approx(3 * kTurn / 4));
  CHECK(towards(kTurn / 4).x == doctest::Approx(-1));
}

TEST_CASE("bearings (1): and, or, not") {
  test::for_drawn_cases("bearings-1", 200, [](std::mt19937_64& rng) {
    const Bearings a = drawn_set(rng), b = drawn_set(rng);
    for (int k = 0; k < 50; ++k) {
      const double at = test::drawn(rng, -kTurn, 2 * kTurn);
      CHECK((a & b).contains(at) == (a.contains(at) && b.contains(at)));
      CHECK((a | b).contains(at) == (a.contains(at) || b.contains(at)));
      CHECK((!a).contains(at) != a.contains(at));
    }
  });
}

TEST_CASE("bearings (2): a set and the rest are the whole circle") {
  test::for_drawn_cases("bearings-2", 200, [](std::mt19937_64& rng) {
    const Bearings a = drawn_set(rng);
    CHECK(a.measure() + (!a).measure() == doctest::Approx(kTurn));
    CHECK((a & !a).empty());
    CHECK((a | !a).whole());
    double sum = 0;
    for (const auto& [from, to] : a.arcs()) {
      CHECK(to > from);
      CHECK(a.contains(0.5 * (from + to)));
      sum += to - from;
    }
    CHECK(sum == doctest::Approx(a.measure()));
  });
}

TEST_CASE("bearings: an arc over straight ahead") {
  const Bearings arc = Bearings::arc(-0.5, 0.25);
  CHECK(arc.contains(0));
  CHECK(arc.contains(6.0));
  CHECK(!arc.contains(0.3));
  CHECK(arc.measure() == doctest::Approx(0.75));
  REQUIRE(arc.arcs().size() == 1);
  CHECK(arc.arcs()[0].second == doctest::Approx(kTurn + 0.25));
  CHECK(Bearings::arc(1, 1 + kTurn).whole());
}

}  // namespace
}  // namespace swathe
