#include "plane/clip.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <polyclipping/clipper.hpp>
#include <stdexcept>
#include <utility>

#include "base/memory_watch.hpp"

namespace swathe::plane {
namespace {

namespace cl = ClipperLib;

cl::cInt on_grid(double value, double grid) {
  const double rounded = std::round(value / grid);
  // Catches what is not a number, too. No input comes near: covers are at most 16 sides of 20 m
  // long, 3e8 grids. Of a number 2 m high an em is at most 20 m (digits.cpp: none lower than 0.1
  // em), and its digits stand at most some 3e4 em apart (16 bits over 16 units an em, five times,
  // moved as far again): 6e11 grids. Clipper takes up to 4e18.
  assert(std::abs(rounded) < 1e15);
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

bool clip_once(cl::ClipType type, const cl::Paths& subject, const cl::Paths& clip,
               cl::PolyTree& tree) {
  cl::Clipper clipper(cl::ioStrictlySimple);
  // No path taken means that none has an area: then Execute would answer as if it had failed.
  const bool any_subject = clipper.AddPaths(subject, cl::ptSubject, true);
  const bool any_clip = clipper.AddPaths(clip, cl::ptClip, true);
  if (!any_subject && !any_clip) return true;
  const MemoryWatch watch;  // what is thrown inside comes out as nothing clipped
  const bool done = clipper.Execute(type, tree, cl::pftNonZero, cl::pftNonZero);
  watch.require();
  return done;
}

/// Mirrored, so that the sweep, which goes by Y, goes across.
void swap_axes(cl::Paths& paths) {
  for (cl::Path& path : paths) {
    for (cl::IntPoint& p : path) std::swap(p.X, p.Y);
  }
}

void swap_axes(cl::PolyNodes& nodes) {
  for (cl::PolyNode* node : nodes) {
    for (cl::IntPoint& p : node->Contour) std::swap(p.X, p.Y);
    swap_axes(node->Childs);
  }
}

/// Where Clipper cannot put the crossings of one sweep in order, it may those of another.
Region clip(cl::ClipType type, cl::Paths subject, cl::Paths clip, double grid) {
  cl::PolyTree tree;
  if (clip_once(type, subject, clip, tree)) return to_region(tree, grid);
  swap_axes(subject);
  swap_axes(clip);
  tree.Clear();
  if (!clip_once(type, subject, clip, tree)) throw std::runtime_error("outlines cannot be clipped");
  swap_axes(tree.Childs);
  return to_region(tree, grid);
}

/// What goes wrong inside, Clipper does not say: it answers with nothing.
void grow(const cl::Paths& paths, double by, Join join, double tolerance, cl::PolyTree& tree) {
  constexpr double kMitreLimit = 4;
  cl::ClipperOffset grower(kMitreLimit, std::max(1.0, tolerance / kClipGrid));
  grower.AddPaths(paths, join == Join::Round ? cl::jtRound : cl::jtMiter, cl::etClosedPolygon);
  const MemoryWatch watch;
  grower.Execute(tree, by / kClipGrid);
  watch.require();
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
  // Overlaps are united first: the grower goes by each outline's direction.
  cl::Paths paths = to_grid(unite(region), kClipGrid);
  cl::PolyTree tree;
  grow(paths, by, join, tolerance, tree);
  if (tree.Childs.empty() && !paths.empty()) {  // shrunk to nothing, or the grower has failed
    swap_axes(paths);
    grow(paths, by, join, tolerance, tree);
    if (tree.Childs.empty() && by > 0) throw std::runtime_error("outlines cannot be grown");
    swap_axes(tree.Childs);
  }
  return to_region(tree, kClipGrid);
}

}  // namespace swathe::plane
