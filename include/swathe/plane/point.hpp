#pragma once

#include <algorithm>
#include <cmath>

#include "swathe/base/maths.hpp"

namespace swathe {

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
inline FlatPoint direction(double radians) { return {maths::cos(radians), maths::sin(radians)}; }

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

}  // namespace swathe
