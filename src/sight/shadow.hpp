#pragma once

#include <vector>

#include "swathe/sight.hpp"

namespace swathe {

/// The smallest convex polygon round points, counter-clockwise; empty where they have no area.
/// Source: Andrew, Another efficient algorithm for convex hulls in two dimensions, Information
///   Processing Letters 9 (1979).
plane::Polygon convex_hull(std::vector<FlatPoint> points);

/// The places at height `eye` from which the solid hides some of the digit: a convex polygon for
/// each strip of the digit between two heights, overlapping; what lies farther than kFar is cut
/// off. The whole digit bends with the cloth: its hull would hide what only stands before the
/// bumper's inside.
///
/// Source: the places behind a convex body K as seen from a convex P are K + cone(K - P), which is
///   convex as the sum of convex sets; a level cut of it has its corners on the rays from P's
///   corners through K's, and its far ways from P to K at equal heights.
std::vector<plane::Polygon> shadows_at(const sight::Solid& solid, const DigitInSpace& digit,
                                       double eye);
inline constexpr double kFar = 1e9;  ///< mm

/// Bearings of a circle that lie in a convex polygon.
Bearings inside(const plane::Polygon& convex, FlatPoint center, double radius);
bool inside(const plane::Polygon& convex, FlatPoint p);

}  // namespace swathe
