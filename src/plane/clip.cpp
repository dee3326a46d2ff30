#include "swathe/plane/clip.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <polyclipping/clipper.hpp>
#include <utility>

#include "base/memory_watch.hpp"

namespace swathe {
namespace {

namespace cl = ClipperLib;

cl::cInt on_grid(double value, double grid) {
  const double rounded = std::round(value / grid);
  assert(std::abs(rounded) < 1e15);  // also catches what is not a number
  return static_cast<cl::cInt>(rounded);
}

cl::Paths to_grid(const Region& region, double grid) {
  cl::Paths paths;
  paths.reserve(region.size());
  for (const Polygon& polygon : region) {
    cl::Path path;
    path.reserve(polygon.size());
    for (const FlatPoint p : polygon) path.emplace_back(on_grid(p.x, grid), on_grid(p.y, grid));
    paths.push_back(std::move(path));
  }
  return paths;
}

bool lower(const cl::IntPoint& a, const cl::IntPoint& b) {
  return std::pair(a.Y, a.X) < std::pair(b.Y, b.X);
}

/// By first points; where two outlines share one, by the points after it.
bool before(const cl::Path& a, const cl::Path& b) {
  return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(), lower);
}

bool outline_before(const cl::PolyNode* a, const cl::PolyNode* b) {
  return before(a->Contour, b->Contour);
}

/// The outer outlines of `nodes`, each followed by its holes, and by what lies in those.
void add_outlines(cl::PolyNodes& nodes, bool holes, double grid, Region& out) {
  for (cl::PolyNode* node : nodes) {
    cl::Path& path = node->Contour;
    if (cl::Orientation(path) == holes) cl::ReversePath(path);
    std::rotate(path.begin(), std::min_element(path.begin(), path.end(), lower), path.end());
  }
  std::sort(nodes.begin(), nodes.end(), outline_before);
  for (cl::PolyNode* node : nodes) {
    Polygon polygon;
    polygon.reserve(node->Contour.size());
    for (const cl::IntPoint& p : node->Contour) {
      polygon.push_back({grid * static_cast<double>(p.X), grid * static_cast<double>(p.Y)});
    }
    if (!polygon.empty()) out.push_back(std::move(polygon));
    add_outlines(node->Childs, !holes, grid, out);
  }
}

Region to_region(cl::PolyTree& tree, double grid) {
  Region region;
  add_outlines(tree.Childs, false, grid, region);
  return region;
}

Region clip(cl::ClipType type, const cl::Paths& subject, const cl::Paths& clip, double grid) {
  cl::Clipper clipper(cl::ioStrictlySimple);
  clipper.AddPaths(subject, cl::ptSubject, true);
  clipper.AddPaths(clip, cl::ptClip, true);
  cl::PolyTree tree;
  const MemoryWatch watch;  // what is thrown inside comes out as nothing clipped
  clipper.Execute(type, tree, cl::pftNonZero, cl::pftNonZero);
  watch.require();
  return to_region(tree, grid);
}

}  // namespace

Region unite(const Region& region, double grid) {
  return clip(cl::ctUnion, to_grid(region, grid), {}, grid);
}

Region unite(const Region& a, const Region& b, double grid) {
  return clip(cl::ctUnion, to_grid(a, grid), to_grid(b, grid), grid);
}

Region intersect(const Region& a, const Region& b, double grid) {
  return clip(cl::ctIntersection, to_grid(a, grid), to_grid(b, grid), grid);
}

Region subtract(const Region& a, const Region& b, double grid) {
  return clip(cl::ctDifference, to_grid(a, grid), to_grid(b, grid), grid);
}

Region offset(const Region& region, double by, Join join, double tolerance) {
  constexpr double kMitreLimit = 4;
  cl::ClipperOffset grower(kMitreLimit, std::max(1.0, tolerance / kClipGrid));
  // Overlaps are united first: the grower goes by each outline's direction.
  grower.AddPaths(to_grid(unite(region), kClipGrid),
                  join == Join::Round ? cl::jtRound : cl::jtMiter, cl::etClosedPolygon);
  cl::PolyTree tree;
  const MemoryWatch watch;
  grower.Execute(tree, by / kClipGrid);
  watch.require();
  return to_region(tree, kClipGrid);
}

}  // namespace swathe
