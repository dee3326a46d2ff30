#pragma once

#include <limits>

#include "swathe/plane/point.hpp"

namespace swathe {

/// An outside corner of the frame: where the line at each depth bends or ends there. A depth is
/// measured outward from the frame's line; along a line, places are told from the frame's corner
/// on, mm.
///
/// Lines bend at a point, in the plane that halves the corner. Where padding bends, those outside
/// the boards take an arc instead, about the point where the boards' own outer edge bends.
/// Holds (corner_test.cpp): (1) the lines of both sides meet in the halving plane; (2) they are as
/// long up to there as `to_middle` tells, and by `surplus` longer further out; (3) `crossing` lies
/// on both sides' lines.
struct Corner {
  double turn = 0;  ///< radians; negative where the frame turns inwards, and no line goes round
  /// The deepest line that bends at a point.
  double sharp_to = std::numeric_limits<double>::max();

  bool rounded() const { return sharp_to < std::numeric_limits<double>::max(); }

  /// So far it runs straight.
  double straight(double depth) const;
  double radius(double depth) const;    ///< of its arc; zero where it bends at a point
  double half_arc(double depth) const;  ///< the length of half its arc, up to the halving plane
  /// Its length up to the halving plane.
  double to_middle(double depth) const { return straight(depth) + half_arc(depth); }
  /// How much longer lines get up to there: by so much of depth where they bend at a point, and by
  /// so much where they take arcs.
  double longer(double sharp, double round) const;
  /// By how much a line is longer than one further in: half the cloth that is too much there.
  double surplus(double inner, double outer) const;
  /// Where it is when it has turned so far, from none to half the corner: x along the side it
  /// comes from, y outward.
  FlatPoint on_arc(double depth, double turned) const;

  /// Where it crosses the neighbor's line of another depth: there a strip ends that laps over the
  /// neighbor's (at that one's outer face) or butts against it (at its inner face).
  double crossing(double depth, double neighbor) const;
  /// Where the square end of a bumper stands that leaves no gap at the corner: level with the
  /// neighbor's outer edge where it laps over it, else against the neighbor's end that does.
  double square_end(double depth, bool laps) const;
};

}  // namespace swathe
