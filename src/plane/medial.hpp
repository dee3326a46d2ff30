#pragma once

#include <cstddef>
#include <vector>

#include "swathe/plane.hpp"

namespace swathe::plane {

/// The center of a circle that lies in a region and touches its outline in two places.
struct MedialPoint {
  FlatPoint at;
  double radius = 0;
  FlatPoint touch_a, touch_b;

  /// How nearly the places lie on opposite sides: their chord over the diameter, 1 where they do.
  double opposed() const { return radius > 0 ? apart(touch_a, touch_b) / (2 * radius) : 0; }
};

/// A stretch of a medial axis along which the circles touch the same two edges or corners.
struct MedialEdge {
  std::size_t from = 0, to = 0;     ///< numbers of the junctions at its ends
  std::vector<MedialPoint> points;  ///< both ends among them
};

/// The middle lines of a region: the centers of all circles in it that touch its outline in two
/// places or more.
struct MedialAxis {
  std::vector<MedialEdge> edges;
  std::size_t junctions = 0;
};

/// The medial axis, in points at most `step` apart. Where the circles touch two straight edges less
/// nearly opposite than `least_opposed` all along, as in corners, the edge is left out.
///
/// Requires: outer outlines counter-clockwise, holes clockwise, no crossings, as unite() makes
/// them; all is rounded to kClipGrid.
/// Source: the edges of the Voronoi diagram of the outline's edges and corners that lie inside;
///   D. T. Lee, Medial axis transformation of a planar shape, IEEE PAMI 4 (1982).
MedialAxis medial_axis(const Region& region, double step, double least_opposed = 0);

}  // namespace swathe::plane
