#include "draw/path_clip.hpp"

#include <algorithm>
#include <cmath>

namespace swathe {
namespace {

/// The stretch of an edge inside a box, as shares of the edge. Source: Liang and Barsky, A new
/// concept and method for line clipping, ACM TOG 3 (1984).
struct Inside {
  double from = 0, to = 1;
  bool any() const { return from < to; }
};

Inside inside(FlatPoint a, FlatPoint b, const plane::Box& box) {
  Inside part;
  const auto slab = [&](double at, double step, double lo, double hi) {
    if (step == 0.0) {
      if (at < lo || at > hi) part.to = -1;
      return;
    }
    const double one = (lo - at) / step, other = (hi - at) / step;
    part.from = std::max(part.from, std::min(one, other));
    part.to = std::min(part.to, std::max(one, other));
  };
  slab(a.x, b.x - a.x, box.lo.x, box.hi.x);
  slab(a.y, b.y - a.y, box.lo.y, box.hi.y);
  return part;
}

}  // namespace

std::vector<plane::Path> clipped(const plane::Path& path, const plane::Box& box, double tolerance) {
  const plane::Box all = bounds(path);
  if (!all.empty() && box.holds(all)) return {path};
  if (all.empty() || !box.meets(all)) return {};
  std::vector<FlatPoint> points = flatten(path, tolerance);
  if (path.closed && !points.empty()) points.push_back(points.front());
  std::vector<std::vector<FlatPoint>> parts;
  bool goes_on = false;  // the last part ends where this edge starts
  for (std::size_t k = 0; k + 1 < points.size(); ++k) {
    const FlatPoint a = points[k], b = points[k + 1];
    const Inside part = inside(a, b, box);
    if (!part.any()) {
      goes_on = false;
      continue;
    }
    if (!goes_on || part.from > 0) parts.push_back({a + part.from * (b - a)});
    parts.back().push_back(part.to < 1 ? a + part.to * (b - a) : b);
    goes_on = part.to >= 1;
  }
  // A closed path that starts inside comes back to its first part.
  if (path.closed && goes_on && parts.size() > 1 && parts.front().front() == points.front()) {
    std::vector<FlatPoint>& last = parts.back();
    last.insert(last.end(), parts.front().begin() + 1, parts.front().end());
    parts.front() = std::move(last);
    parts.pop_back();
  }
  std::vector<plane::Path> paths;
  for (const std::vector<FlatPoint>& part : parts) paths.push_back(open_path(part));
  return paths;
}

}  // namespace swathe
