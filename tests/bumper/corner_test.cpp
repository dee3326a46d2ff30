#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "swathe/bumper.hpp"

// Against the plan itself: two straight sides drawn through their corner, and points on them.
namespace swathe {
namespace {

struct Drawn {
  Corner corner;
  double depth = 0, other = 0;  ///< the other deeper
};
Drawn drawn_corner(std::mt19937_64& rng) {
  Drawn one;
  one.corner.turn = test::drawn(rng, 0.05, 2.9);
  if (rng() % 2 == 0) one.corner.sharp_to = test::drawn(rng, 10, 25);
  one.depth = test::drawn(rng, 0, 90);
  one.other = one.depth + test::drawn(rng, 0, 40);
  return one;
}

/// A place of a side in plan: the side before runs along x to the corner at the origin, outside
/// below; the one after leaves turned counter-clockwise. `past` is beyond the corner on either.
FlatPoint before(double past, double depth) { return {past, -depth}; }
FlatPoint after(const Corner& corner, double past, double depth) {
  const FlatPoint along = plane::direction(corner.turn);
  return -past * along - depth * left_of(along);
}

TEST_CASE("corner (1): the lines of both sides meet in the halving plane") {
  test::for_drawn_cases("corner-1", 1000, [](std::mt19937_64& rng) {
    const auto [corner, depth, other] = drawn_corner(rng);
    const FlatPoint end = corner.on_arc(depth, 0.5 * corner.turn);
    CHECK(apart(before(end.x, end.y), after(corner, end.x, end.y)) < 1e-9);
    const FlatPoint begin = corner.on_arc(depth, 0.0);
    CHECK(apart(begin, {corner.straight(depth), depth}) < 1e-9);
  });
}

TEST_CASE("corner (2): the lines' lengths, and how much longer one is further out") {
  test::for_drawn_cases("corner-2", 300, [](std::mt19937_64& rng) {
    const auto [corner, depth, other] = drawn_corner(rng);
    constexpr int kChords = 2000;
    double length = corner.straight(depth);
    for (int k = 0; k < kChords; ++k)
      length += apart(corner.on_arc(depth, 0.5 * corner.turn * k / kChords),
                      corner.on_arc(depth, 0.5 * corner.turn * (k + 1) / kChords));
    CHECK(corner.to_middle(depth) == doctest::Approx(length).epsilon(1e-6));
    CHECK(corner.surplus(depth, other) ==
          doctest::Approx(corner.to_middle(other) - corner.to_middle(depth)).epsilon(1e-9));
  });
}

TEST_CASE("corner (3): crossings lie on both sides' lines") {
  test::for_drawn_cases("corner-3", 1000, [](std::mt19937_64& rng) {
    const auto [corner, depth, other] = drawn_corner(rng);
    const FlatPoint at = before(corner.crossing(depth, other), depth);
    // How far outward of the side after: along its outward normal.
    CHECK(dot(at, -1.0 * plane::left_of(plane::direction(corner.turn))) ==
          doctest::Approx(other).epsilon(1e-9));
    // And the same seen from the other side.
    const FlatPoint from_after = after(corner, corner.crossing(other, depth), other);
    CHECK(apart(at, from_after) < 1e-6);
  });
}

TEST_CASE("square ends at a corner: nothing of the one that stops lies in the other") {
  test::for_drawn_cases("corner-end", 1000, [](std::mt19937_64& rng) {
    const Corner corner = drawn_corner(rng).corner;
    const double thick = test::drawn(rng, 5, 25), depth = thick + test::drawn(rng, 10, 90);
    const Corner::SquareEnd laps = corner.square_end(thick, depth, true);
    const Corner::SquareEnd butts = corner.square_end(thick, depth, false);
    CHECK(laps.board <= laps.padding + 1e-9);
    CHECK(butts.board <= butts.padding + 1e-9);
    // The lapping padding's outer edge is where the sides' outer faces cross; its board lies behind
    // the front face of the neighbor's board, and touches it.
    const double half = std::tan(0.5 * corner.turn);
    CHECK(laps.padding == doctest::Approx(depth * half));
    double furthest = -1e300;
    for (const double d : {0.0, thick})
      furthest = std::max(furthest, dot(before(laps.board, d),
                                        -1.0 * plane::left_of(plane::direction(corner.turn))));
    CHECK(furthest == doctest::Approx(thick));
    // Places of the butting strips in plan, as the lapping side measures them.
    const auto inside = [&](FlatPoint p) {
      const double out = -p.y;
      const bool board = p.x < laps.board - 1e-6 && out > 1e-6 && out < thick - 1e-6;
      const bool padding = p.x < laps.padding - 1e-6 && out > thick + 1e-6 && out < depth - 1e-6;
      return board || padding;
    };
    for (int k = 0; k < 40; ++k) {
      const double back = k < 20 ? 0.0 : test::drawn(rng, 0, 100);
      const double in_board = test::drawn(rng, 0, thick);
      const double in_padding = test::drawn(rng, thick, depth);
      CHECK_FALSE(inside(after(corner, butts.board - back, in_board)));
      CHECK_FALSE(inside(after(corner, butts.padding - back, in_padding)));
    }
  });
}

TEST_CASE("worked corners: E, and darts at the board's back") {
  // Worked figures, computed independently of the program: 3/4 in board, 3 1/4 in deep in all.
  Corner square;
  square.turn = std::numbers::pi / 2;
  CHECK(square.to_middle(3.25) == doctest::Approx(3.25));
  CHECK(square.surplus(0.0, 3.25) == doctest::Approx(3.25));
  CHECK(square.crossing(0.0, 3.25) == doctest::Approx(3.25));
  CHECK(square.crossing(3.25, 0.75) == doctest::Approx(0.75));
  Corner bent = square;
  bent.sharp_to = 0.75;
  CHECK(bent.to_middle(3.25) == doctest::Approx(0.75 + 2.5 * std::numbers::pi / 4));
  CHECK(bent.radius(3.25) == doctest::Approx(2.5));
  CHECK(bent.radius(0.5) == 0.0);
  Corner hexagon;
  hexagon.turn = std::numbers::pi / 3;
  CHECK(hexagon.surplus(0.0, 3.25) == doctest::Approx(1.87639).epsilon(1e-5));
}

}  // namespace
}  // namespace swathe
