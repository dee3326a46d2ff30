#pragma once

#include "swathe/plane.hpp"

// Union, intersection, difference and growing of areas. Outlines are first rounded to a square
// grid, so that the answer is the same on every machine. Results have outer outlines
// counter-clockwise and their holes clockwise; each outline starts at its lowest point (the left
// one of two); outer outlines stand in the order of these points, each followed by its own holes.
namespace swathe::plane {

/// The grid for lengths in millimeters: 1 um.
inline constexpr double kClipGrid = 0.001;

/// What lies inside by non-zero winding: overlaps united, crossings resolved.
///
/// Requires (here and below): finite coordinates within 1e9 grids of the origin.
Region unite(const Region& region, double grid = kClipGrid);
/// In one of them or both.
Region unite(const Region& a, const Region& b, double grid = kClipGrid);
/// In both.
Region intersect(const Region& a, const Region& b, double grid = kClipGrid);
/// In `a` and not in `b`.
Region subtract(const Region& a, const Region& b, double grid = kClipGrid);

/// How the corners of a grown outline are closed.
enum class Join {
  Round,  ///< by an arc about the old corner
  Mitre,  ///< by its edges run out until they meet; cut square where that is past 4 x `by`
};

/// The region grown by `by` mm, or shrunk where it is negative. Round joins stay within
/// `tolerance` of their arcs.
///
/// Holds: (1) a convex outline of area A and perimeter P grown by r, joined round, has the area
///            A + P r + pi r^2;
///        (2) shrinking undoes growing of a convex outline.
/// Source: (1) Steiner's formula; Schneider, Convex Bodies: The Brunn-Minkowski Theory, section 4.
Region offset(const Region& region, double by, Join join = Join::Round, double tolerance = 0.005);

}  // namespace swathe::plane
