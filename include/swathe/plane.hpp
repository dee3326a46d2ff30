#pragma once

// Points and paths in a flat plane and in space; hulls of discs. Millimeters.

#include <algorithm>
#include <cmath>
#include <vector>

namespace swathe::plane {

/// A point, or a way from one to another, in a flat plane; millimeters.
struct FlatPoint {
  double x = 0, y = 0;

  friend constexpr bool operator==(FlatPoint, FlatPoint) = default;
  friend constexpr FlatPoint operator+(FlatPoint a, FlatPoint b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr FlatPoint operator-(FlatPoint a, FlatPoint b) { return {a.x - b.x, a.y - b.y}; }
  friend constexpr FlatPoint operator*(double k, FlatPoint a) { return {k * a.x, k * a.y}; }
};

constexpr double dot(FlatPoint a, FlatPoint b) { return a.x * b.x + a.y * b.y; }
/// Positive where b lies counter-clockwise of a.
constexpr double cross(FlatPoint a, FlatPoint b) { return a.x * b.y - a.y * b.x; }
inline double norm(FlatPoint a) { return std::sqrt(dot(a, a)); }
inline double apart(FlatPoint a, FlatPoint b) { return norm(b - a); }
/// A quarter turn counter-clockwise.
constexpr FlatPoint left_of(FlatPoint a) { return {-a.y, a.x}; }
inline FlatPoint unit(FlatPoint a) { return (1.0 / norm(a)) * a; }
FlatPoint direction(double radians);

/// An upright box; empty (lo above hi) until something is in it.
struct Box {
  FlatPoint lo{1e300, 1e300}, hi{-1e300, -1e300};

  bool empty() const { return lo.x > hi.x; }
  double width() const { return hi.x - lo.x; }
  double height() const { return hi.y - lo.y; }
  FlatPoint middle() const { return 0.5 * (lo + hi); }
  void cover(FlatPoint p) {
    lo = {std::min(lo.x, p.x), std::min(lo.y, p.y)};
    hi = {std::max(hi.x, p.x), std::max(hi.y, p.y)};
  }
  void cover(const Box& b) {
    if (b.empty()) return;
    cover(b.lo);
    cover(b.hi);
  }
  bool holds(FlatPoint p) const { return p.x >= lo.x && p.x <= hi.x && p.y >= lo.y && p.y <= hi.y; }
  bool holds(const Box& b) const { return holds(b.lo) && holds(b.hi); }
  bool meets(const Box& b) const {
    return lo.x <= b.hi.x && b.lo.x <= hi.x && lo.y <= b.hi.y && b.lo.y <= hi.y;
  }
  Box grown(double by) const { return {{lo.x - by, lo.y - by}, {hi.x + by, hi.y + by}}; }
};

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

/// A point, or a way from one to another, in space; x to the machine's right, y forward, z up from
/// the floor. Millimeters.
struct SpacePoint {
  double x = 0, y = 0, z = 0;

  friend constexpr SpacePoint operator+(const SpacePoint& a, const SpacePoint& b) {
    return {a.x + b.x, a.y + b.y, a.z + b.z};
  }
  friend constexpr SpacePoint operator-(const SpacePoint& a, const SpacePoint& b) {
    return {a.x - b.x, a.y - b.y, a.z - b.z};
  }
  friend constexpr SpacePoint operator*(double k, const SpacePoint& a) {
    return {k * a.x, k * a.y, k * a.z};
  }
};

constexpr double dot(const SpacePoint& a, const SpacePoint& b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
constexpr SpacePoint cross(const SpacePoint& a, const SpacePoint& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double norm(const SpacePoint& a) { return std::sqrt(dot(a, a)); }
inline double apart(const SpacePoint& a, const SpacePoint& b) { return norm(b - a); }
inline SpacePoint unit(const SpacePoint& a) { return (1.0 / norm(a)) * a; }

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

}  // namespace swathe::plane

namespace swathe {

// Every room's own words.
using plane::FlatPoint;
using plane::SpacePoint;

}  // namespace swathe
