#pragma once

#include <optional>

#include "swathe/plane.hpp"

namespace swathe::plane {

/// A circle by its center and its rightmost x.
struct TouchingCircle {
  FlatPoint center;
  double right = 0;
};

/// A directed line through two places whose coordinates are whole numbers below 2^32.
struct WholeLine {
  FlatPoint from, to;
};

// Both give each value to within 2^-48 of itself: 16 or 32 units in a double's last place. Where
// two doubles' digits do not suffice for that they give nothing.

/// The circle that touches three lines and has its center to the right of all of them. Where there
/// is one to the left of all, that one, and its radius is taken as below zero.
std::optional<TouchingCircle> circle_touching(const WholeLine& one, const WholeLine& two,
                                              const WholeLine& three);

/// The circle through a point that touches two lines, which are not parallel; of the two such
/// circles the further one along the sum of both directions, or the nearer one.
std::optional<TouchingCircle> circle_through(FlatPoint point, const WholeLine& one,
                                             const WholeLine& two, bool further);

}  // namespace swathe::plane
