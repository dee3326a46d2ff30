#include "sight/shadow.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace swathe {
namespace {

FlatPoint plan_of(const SpacePoint& p) { return {p.x, p.y}; }

/// A straight piece of a digit's upright edge.
struct Chord {
  SpacePoint lo, hi;

  /// Where it passes a height. Requires: between its ends.
  FlatPoint at(double z) const {
    if (hi.z <= lo.z) return plan_of(lo);
    return plan_of(lo) + ((z - lo.z) / (hi.z - lo.z)) * (plan_of(hi) - plan_of(lo));
  }
};

/// A digit between two heights, flat enough to be the convex body of its corners.
using Strip = std::array<Chord, 2>;  // its left and right edge

/// Whether any of the solid stands before the cloth: it must cross a plane that touches the digit.
bool stands_before(const sight::Solid& solid, const DigitInSpace& digit) {
  constexpr double kTouch = 1e-3;
  for (std::size_t k = 0; k < digit.corners.size(); ++k) {
    const SpacePoint &p = digit.corners[k], &n = digit.normals[k];
    for (const sight::Solid::Level& level : solid.levels)
      for (const FlatPoint q : level.plan)
        if ((q.x - p.x) * n.x + (q.y - p.y) * n.y + (level.z - p.z) * n.z > kTouch) return true;
  }
  return false;
}

}  // namespace

plane::Polygon convex_hull(std::vector<FlatPoint> points) {
  std::ranges::sort(
      points, [](FlatPoint a, FlatPoint b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  plane::Polygon hull;
  const auto add = [&](FlatPoint p, std::size_t keep) {
    while (hull.size() >= keep + 2 &&
           cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0.0)
      hull.pop_back();
    hull.push_back(p);
  };
  for (const FlatPoint p : points) add(p, 0);
  const std::size_t lower = hull.size();
  for (std::size_t k = points.size(); k-- > 0;) add(points[k], lower - 1);
  if (!hull.empty()) hull.pop_back();
  return hull.size() < 3 ? plane::Polygon{} : hull;
}

namespace {

plane::Polygon shadow_of(const sight::Solid& solid, const Strip& strip, double eye) {
  std::vector<FlatPoint> points, ways;
  if (eye >= solid.bottom() && eye <= solid.top()) points = solid.plan_at(eye);
  for (const Chord& edge : strip) {
    for (const SpacePoint& p : {edge.lo, edge.hi}) {
      for (const sight::Solid::Level& level : solid.levels) {
        const double rise = level.z - p.z, on = (eye - level.z) / rise;
        if (rise == 0.0 || on < 0.0 || on * 1e3 > kFar) continue;
        for (const FlatPoint k : level.plan) points.push_back(k + on * (k - plan_of(p)));
      }
      if (p.z < solid.bottom() || p.z > solid.top()) continue;
      for (const FlatPoint k : solid.plan_at(p.z)) ways.push_back(k - plan_of(p));
    }
    for (const sight::Solid::Level& level : solid.levels) {
      if (level.z < edge.lo.z || level.z > edge.hi.z) continue;
      const FlatPoint p = edge.at(level.z);
      for (const FlatPoint k : level.plan) ways.push_back(k - p);
    }
  }
  if (points.empty()) return {};
  const FlatPoint base = points.front();
  for (const FlatPoint way : ways)
    if (norm(way) > 0.0) points.push_back(base + kFar * unit(way));
  return convex_hull(std::move(points));
}

}  // namespace

std::vector<plane::Polygon> shadows_at(const sight::Solid& solid, const DigitInSpace& digit,
                                       double eye) {
  std::vector<plane::Polygon> shadows;
  if (!stands_before(solid, digit)) return shadows;
  for (std::size_t k = 1; k < digit.left.size(); ++k) {
    const Strip strip = {Chord{digit.left[k - 1], digit.left[k]},
                         Chord{digit.right[k - 1], digit.right[k]}};
    if (plane::Polygon from = shadow_of(solid, strip, eye); !from.empty())
      shadows.push_back(std::move(from));
  }
  return shadows;
}

bool inside(const plane::Polygon& convex, FlatPoint p) {
  for (std::size_t k = 0; k < convex.size(); ++k) {
    const FlatPoint a = convex[k], b = convex[k + 1 < convex.size() ? k + 1 : 0];
    if (cross(b - a, p - a) < 0.0) return false;
  }
  return !convex.empty();
}

Bearings inside(const plane::Polygon& convex, FlatPoint center, double radius) {
  std::vector<double> crossings;
  for (std::size_t k = 0; k < convex.size(); ++k) {
    const FlatPoint a = convex[k] - center, b = convex[(k + 1) % convex.size()] - center;
    // The foot of the center on the edge's line, and how far either side of it the circle crosses.
    const FlatPoint way = unit(b - a);
    const double off = cross(a, way), half = radius * radius - off * off;
    if (half <= 0.0) continue;
    const double from = dot(a, way), to = dot(b, way);
    const FlatPoint foot = a - from * way;
    for (const double along : {-std::sqrt(half), std::sqrt(half)})
      if (along >= from && along <= to) crossings.push_back(bearing_of(foot + along * way));
  }
  return Bearings::between(std::move(crossings), [&](double bearing) {
    return inside(convex, center + radius * towards(bearing));
  });
}

}  // namespace swathe
