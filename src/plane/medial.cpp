#include "plane/medial.hpp"

#include <algorithm>
#include <boost/polygon/voronoi_diagram.hpp>
#include <cassert>
#include <cmath>
#include <cstdint>

#include "plane/clip.hpp"
#include "plane/voronoi.hpp"

namespace swathe::plane {
namespace {

using Diagram = boost::polygon::voronoi_diagram<double>;

/// A straight edge of the outline, in grids; the region lies to its left.
struct OutlineEdge {
  FlatPoint from, to;
  std::size_t before = 0, after = 0;  // its neighbors round the outline

  FlatPoint way() const { return to - from; }
};

FlatPoint on_grid(FlatPoint p) {
  const FlatPoint rounded{std::round(p.x / kClipGrid), std::round(p.y / kClipGrid)};
  // Catches what is not a number, too. No input comes near: one digit reaches 10 em from its origin
  // and is at least 0.1 em high (digits.cpp), so that of a number 2 m high, the most a job can ask
  // for and make_legal() then doubles it to, 200 m: 2e8 grids.
  assert(std::abs(rounded.x) < 2e9 && std::abs(rounded.y) < 2e9);
  return rounded;
}

std::vector<OutlineEdge> edges_of(const Region& region) {
  std::vector<OutlineEdge> edges;
  for (const Polygon& polygon : region) {
    Polygon points;
    for (const FlatPoint p : polygon) {
      const FlatPoint fresh = on_grid(p);
      if (points.empty() || !(fresh == points.back())) points.push_back(fresh);
    }
    while (points.size() > 1 && points.front() == points.back()) points.pop_back();
    if (points.size() < 3) continue;
    const std::size_t first = edges.size(), n = points.size();
    for (std::size_t i = 0; i < n; ++i) {
      edges.push_back({points[i], points[(i + 1) % n], first + (i + n - 1) % n,  //
                       first + (i + 1) % n});
    }
  }
  return edges;
}

void build(Diagram& diagram, const std::vector<OutlineEdge>& edges) {
  VoronoiBuilder builder;
  for (const OutlineEdge& edge : edges) {
    const auto whole = [](double value) { return static_cast<std::int32_t>(value); };
    builder.insert_segment(whole(edge.from.x), whole(edge.from.y), whole(edge.to.x),
                           whole(edge.to.y));
  }
  builder.construct(&diagram);
}

/// What a cell of the diagram is nearest to: an edge of the outline, or the corner at which one
/// edge ends and the next starts.
struct Site {
  const OutlineEdge* edge = nullptr;
  const OutlineEdge* next = nullptr;  // of a corner

  bool corner() const { return next != nullptr; }

  FlatPoint nearest(FlatPoint p) const {
    if (corner()) return next->from;
    const double share = dot(p - edge->from, edge->way()) / dot(edge->way(), edge->way());
    return edge->from + std::clamp(share, 0.0, 1.0) * edge->way();
  }

  /// Whether the region holds a point that is nearest to this site.
  bool in_region(FlatPoint p) const {
    // What is nearest to a corner lies on its bulging side: inside where the outline turns right.
    return corner() ? cross(edge->way(), next->way()) < 0 : cross(edge->way(), p - edge->from) > 0;
  }
};

Site site_of(const Diagram::cell_type& cell, const std::vector<OutlineEdge>& edges) {
  const OutlineEdge& edge = edges[cell.source_index()];
  switch (cell.source_category()) {
    case boost::polygon::SOURCE_CATEGORY_SEGMENT_START_POINT:
      return {&edges[edge.before], &edge};
    case boost::polygon::SOURCE_CATEGORY_SEGMENT_END_POINT:
      return {&edge, &edges[edge.after]};
    default:
      return {&edge, nullptr};
  }
}

/// How nearly opposite a circle touches two straight edges: the same along their whole bisector.
/// Where one is a corner it changes from place to place: 1, the most it can be.
double opposed_edges(const Site& one, const Site& other) {
  if (one.corner() || other.corner()) return 1;
  const double turn = dot(unit(one.edge->way()), unit(other.edge->way()));
  return std::sqrt(std::max(0.0, 1 - turn) / 2);
}

/// Where the line square to an edge, `along` from its start, is as far from it as from a corner.
FlatPoint on_parabola(FlatPoint corner, const OutlineEdge& edge, double along) {
  const FlatPoint way = unit(edge.way());
  const double x = dot(corner - edge.from, way), height = cross(way, corner - edge.from);
  const double rise = ((along - x) * (along - x) + height * height) / (2 * height);
  return edge.from + along * way + rise * left_of(way);
}

/// The curve from a to b as far from one site as from the other, in points 0 to count(), no further
/// apart than `step`.
class Bisector {
 public:
  Bisector(FlatPoint a, FlatPoint b, const Site& one, const Site& other, double step)
      : a_(a),
        b_(b),
        count_(static_cast<int>(std::clamp(std::ceil(apart(a, b) / step), 1.0, 1e5))),
        curved_(one.corner() != other.corner()),
        edge_(one.corner() ? other.edge : one.edge),
        corner_(one.corner()     ? one.next->from
                : other.corner() ? other.next->from
                                 : a),
        way_(unit(edge_->way())) {}

  int count() const { return count_; }
  FlatPoint at(int i) const {
    if (i == 0) return a_;
    if (i == count_) return b_;
    const FlatPoint chord = a_ + (static_cast<double>(i) / count_) * (b_ - a_);
    return curved_ ? on_parabola(corner_, *edge_, dot(chord - edge_->from, way_)) : chord;
  }
  FlatPoint middle() const { return 0.5 * (at(count_ / 2) + at((count_ + 1) / 2)); }

 private:
  FlatPoint a_, b_;
  int count_;
  bool curved_;
  const OutlineEdge* edge_;  ///< the straight one where the curve is a parabola
  FlatPoint corner_, way_;
};

}  // namespace

MedialAxis medial_axis(const Region& region, double step, double least_opposed) {
  const std::vector<OutlineEdge> outline = edges_of(region);
  Diagram diagram;
  build(diagram, outline);
  MedialAxis axis;
  axis.junctions = diagram.num_vertices();
  const auto number = [&](const Diagram::vertex_type* vertex) {
    return static_cast<std::size_t>(vertex - diagram.vertices().data());
  };
  for (const Diagram::edge_type& edge : diagram.edges()) {
    if (!edge.is_primary() || !edge.is_finite()) continue;
    if (&edge > edge.twin()) continue;  // each edge stands there once from either side
    const Site one = site_of(*edge.cell(), outline), other = site_of(*edge.twin()->cell(), outline);
    if (opposed_edges(one, other) < least_opposed) continue;
    const FlatPoint a{edge.vertex0()->x(), edge.vertex0()->y()};
    const FlatPoint b{edge.vertex1()->x(), edge.vertex1()->y()};
    const Bisector points(a, b, one, other, step / kClipGrid);
    // Outside they reach far away: those are not walked.
    if (!(one.corner() ? other : one).in_region(points.middle())) continue;
    MedialEdge fresh{number(edge.vertex0()), number(edge.vertex1()), {}};
    fresh.points.reserve(static_cast<std::size_t>(points.count()) + 1);
    for (int i = 0; i <= points.count(); ++i) {
      const FlatPoint p = points.at(i);
      const FlatPoint touch_a = one.nearest(p), touch_b = other.nearest(p);
      fresh.points.push_back(
          {kClipGrid * p, kClipGrid * apart(p, touch_a), kClipGrid * touch_a, kClipGrid * touch_b});
    }
    axis.edges.push_back(std::move(fresh));
  }
  return axis;
}

}  // namespace swathe::plane
