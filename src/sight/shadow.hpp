#pragma once

#include "swathe/sight/bearings.hpp"
#include "swathe/sight/scene.hpp"

namespace swathe {

/// The smallest convex polygon round points, counter-clockwise; empty where they have no area.
/// Source: Andrew, Another efficient algorithm for convex hulls in two dimensions, Information
///   Processing Letters 9 (1979).
Polygon convex_hull(std::vector<FlatPoint> points);

/// The places at height `eye` from which the solid hides some of the digit: convex; what lies
/// farther than kFar is cut off. Empty where there is none.
///
/// Source: the places behind a convex body K as seen from a convex P are K + cone(K - P), which is
///   convex as the sum of convex sets; a level cut of it has its corners on the rays from P's
///   corners through K's, and its far ways from P to K at equal heights.
Polygon shadow_at(const Solid& solid, const DigitInSpace& digit, double eye);
inline constexpr double kFar = 1e9;  ///< mm

/// Bearings of a circle that lie in a convex polygon.
Bearings inside(const Polygon& convex, FlatPoint centre, double radius);
bool inside(const Polygon& convex, FlatPoint p);

}  // namespace swathe
