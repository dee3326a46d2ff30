#include "plane/crossings.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>
#include <vector>

namespace swathe::plane {
namespace {

/// Whole grids: products of their differences are exact in 64 bits.
struct GridPoint {
  std::int64_t x = 0, y = 0;

  friend bool operator==(GridPoint, GridPoint) = default;
};

struct Edge {
  GridPoint from, to;
  std::size_t number = 0, next = 0;  ///< of this edge, and of the one that starts where it ends

  std::int64_t left() const { return std::min(from.x, to.x); }
  std::int64_t right() const { return std::max(from.x, to.x); }
  std::int64_t low() const { return std::min(from.y, to.y); }
  std::int64_t high() const { return std::max(from.y, to.y); }
};

std::vector<Edge> edges_of(const Region& region, double grid) {
  std::vector<Edge> edges;
  std::vector<GridPoint> points;
  for (const Polygon& polygon : region) {
    points.clear();
    for (const FlatPoint p : polygon) {
      const GridPoint fresh{std::llround(p.x / grid), std::llround(p.y / grid)};
      if (points.empty() || !(fresh == points.back())) points.push_back(fresh);
    }
    while (points.size() > 1 && points.front() == points.back()) points.pop_back();
    const std::size_t first = edges.size(), n = points.size();
    for (std::size_t i = 0; n > 1 && i < n; ++i)
      edges.push_back({points[i], points[(i + 1) % n], first + i, first + (i + 1) % n});
  }
  return edges;
}

/// On which side of a line: -1, 0 (on it) or 1.
int side(GridPoint a, GridPoint b, GridPoint p) {
  const std::int64_t one = (b.x - a.x) * (p.y - a.y), other = (b.y - a.y) * (p.x - a.x);
  return one < other ? -1 : one > other ? 1 : 0;
}

/// Of two edges one after the other: whether the second runs back on the first.
bool folded_back(GridPoint a, GridPoint corner, GridPoint b) {
  return side(a, corner, b) == 0 &&
         ((a.x - corner.x) * (b.x - corner.x) > 0 || (a.y - corner.y) * (b.y - corner.y) > 0);
}

/// Requires: their boxes overlap. Two that lie on one line then share a point too.
bool meet(const Edge& a, const Edge& b) {
  if (a.next == b.number && b.next == a.number) return true;  // there and back again
  if (a.next == b.number) return folded_back(a.from, a.to, b.to);
  if (b.next == a.number) return folded_back(b.from, b.to, a.to);
  return side(a.from, a.to, b.from) * side(a.from, a.to, b.to) <= 0 &&
         side(b.from, b.to, a.from) * side(b.from, b.to, a.to) <= 0;
}

}  // namespace

std::size_t count_crossings(const Region& region, std::size_t most, double grid) {
  std::vector<Edge> edges = edges_of(region, grid);
  std::ranges::stable_sort(edges, {}, &Edge::left);
  std::size_t found = 0;
  std::vector<const Edge*> open;  // those that a line across, swept to the right, may still cut
  for (const Edge& edge : edges) {
    std::erase_if(open, [&](const Edge* other) { return other->right() < edge.left(); });
    for (const Edge* other : open) {
      if (other->low() > edge.high() || other->high() < edge.low() || !meet(edge, *other)) continue;
      if (++found > most) return found;
    }
    open.push_back(&edge);
  }
  return found;
}

}  // namespace swathe::plane
