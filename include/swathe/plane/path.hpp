#pragma once

#include <vector>

#include "swathe/plane/point.hpp"

namespace swathe {

/// A corner of a path, and how the edge that leaves it bends.
struct Vertex {
  FlatPoint at;
  /// Tangent of a quarter of the arc's angle, positive counter-clockwise; 0 for a straight edge.
  double bulge = 0.0;
};

/// Straight edges and circular arcs, one after another; the last edge returns when closed.
struct Path {
  std::vector<Vertex> vertices;
  bool closed = false;
};

/// The circle an arc edge lies on, and its angle, positive counter-clockwise; angle 0 for a
/// straight edge.
struct Arc {
  double angle = 0;
  FlatPoint center;
  double radius = 0;
};
Arc arc_of(FlatPoint from, FlatPoint to, double bulge);

/// A flat outline of straight edges, closed without repeating its first point; mostly
/// counter-clockwise, holes clockwise.
using Polygon = std::vector<FlatPoint>;
/// Outer outlines counter-clockwise, holes clockwise.
using Region = std::vector<Polygon>;

Path open_path(const std::vector<FlatPoint>& points);
Path closed_path(const Polygon& points);
Path line(FlatPoint a, FlatPoint b);
Path rectangle(FlatPoint lo, FlatPoint hi);
/// A rectangle with its corners rounded; the radius is cut to half the shorter side.
Path rounded_rectangle(FlatPoint lo, FlatPoint hi, double radius);
Path circle(FlatPoint center, double radius);

/// The path's points, arcs broken into chords that stay within `tolerance` of them.
std::vector<FlatPoint> flatten(const Path& path, double tolerance);
double length(const Path& path);
Box bounds(const Path& path);
Box bounds(const Polygon& points);
Box bounds(const Region& region);

/// Mirror, turn and move, in that order.
struct Placement {
  bool mirrored = false;  ///< left and right exchanged (x becomes -x)
  double turn = 0.0;      ///< radians, counter-clockwise
  FlatPoint move;

  FlatPoint operator()(FlatPoint p) const;
  Path operator()(const Path& path) const;
  Polygon operator()(const Polygon& polygon) const;  ///< orientation is kept
};

/// Signed: positive where the outline runs counter-clockwise.
double area(const Polygon& polygon);
double area(const Region& region);
bool is_simple(const Polygon& polygon);
/// The outline through some of its points, every other within `tolerance` of it.
/// Source: Douglas and Peucker, Algorithms for the reduction of the number of points required to
///   represent a digitized line, Cartographica 10 (1973).
Polygon thinned(const Polygon& polygon, double tolerance);
/// On or inside an outline, by non-zero winding.
bool contains(const Region& region, FlatPoint p);
bool contains(const Polygon& polygon, FlatPoint p);

}  // namespace swathe
