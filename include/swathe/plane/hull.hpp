#pragma once

#include <vector>

#include "swathe/plane/point.hpp"

namespace swathe {

struct Disc {
  FlatPoint center;
  double radius = 0.0;  ///< zero for a sharp corner
};

/// One piece of a convex outline, walked counter-clockwise: a straight edge, or an arc about
/// `center`.
struct HullPiece {
  FlatPoint from, to;
  double heading = 0.0;  ///< direction of travel at `from`, radians
  double turn = 0.0;     ///< how far the heading turns along the piece; 0 for a straight edge
  double length = 0.0;
  FlatPoint center;     ///< of an arc
  double radius = 0.0;  ///< of an arc; an arc of radius 0 is a sharp corner of length 0
};

/// The outline of the convex hull of discs: arcs and common tangents in turn, counter-clockwise.
/// The first piece is the arc on which the heading is 0; a straight edge of heading 0 comes last.
///
/// Requires: at least one disc; finite centers; radii zero or more.
/// Holds: (1) the pieces close and their turns add up to 2 pi; (2) every disc lies inside;
///        (3) growing all radii by r adds 2 pi r to the length.
std::vector<HullPiece> hull_of_discs(const std::vector<Disc>& discs);

double girth(const std::vector<HullPiece>& hull);

}  // namespace swathe
