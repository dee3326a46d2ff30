#include "tile/tile_search.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <polyclipping/clipper.hpp>
#include <utility>

#include "support/drawn.hpp"

namespace swathe {
namespace {

namespace cl = ClipperLib;

constexpr double kPerMm = 1e5;

cl::IntPoint on_grid(double x, double y) {
  return {static_cast<cl::cInt>(std::llround(kPerMm * x)),
          static_cast<cl::cInt>(std::llround(kPerMm * y))};
}

/// How much ink lies in a box, by Clipper.
double ink_in(const Ink& ink, const plane::Box& box) {
  cl::Clipper clipper;
  for (const InkStroke& stroke : ink.strokes)
    clipper.AddPath({on_grid(stroke.a.x, stroke.a.y), on_grid(stroke.b.x, stroke.b.y)},
                    cl::ptSubject, false);
  clipper.AddPath({on_grid(box.lo.x, box.lo.y), on_grid(box.hi.x, box.lo.y),
                   on_grid(box.hi.x, box.hi.y), on_grid(box.lo.x, box.hi.y)},
                  cl::ptClip, true);
  cl::PolyTree tree;
  clipper.Execute(cl::ctIntersection, tree, cl::pftNonZero, cl::pftNonZero);
  cl::Paths paths;
  cl::OpenPathsFromPolyTree(tree, paths);
  double sum = 0;
  for (const cl::Path& path : paths)
    for (std::size_t k = 0; k + 1 < path.size(); ++k)
      sum += std::hypot(static_cast<double>(path[k + 1].X - path[k].X),
                        static_cast<double>(path[k + 1].Y - path[k].Y));
  return sum / kPerMm;
}

/// Tiles one after another along an edge of the page.
struct Along {
  double start, step, overlap;
  int count;

  std::pair<double, double> cell(int k) const {
    return {start + k * step, start + (k + 1) * step + (k + 1 == count ? overlap : 0.0)};
  }
};

/// Every way to lay tiles along [lo, hi]: starts a millimeter apart, and those that put an edge
/// two millimeters before or after a corner.
std::vector<Along> ways_along(double lo, double hi, double step, double overlap,
                              const std::vector<double>& corners) {
  std::vector<double> starts;
  for (int k = 0; k < step; ++k) starts.push_back(lo - k);
  for (const double corner : corners)
    for (const double edge : {corner - 2, corner + 2}) {
      double start = edge;
      while (start > lo) start -= step;
      while (start + step <= lo) start += step;
      starts.push_back(start);
    }
  std::vector<Along> ways;
  for (const double start : starts) {
    Along way{start, step, overlap, 1};
    while (way.cell(way.count - 1).second < hi) ++way.count;
    ways.push_back(way);
  }
  return ways;
}

/// Fewest tiles, and of as few the fewest slivers: the ink clipped to every cell of every place.
std::pair<std::size_t, std::size_t> by_clipping(const Ink& ink,
                                                const std::vector<FlatPoint>& corners,
                                                double image_width, double image_height,
                                                double overlap) {
  const plane::Box all = ink.bounds().grown(2);
  std::vector<double> x, y;
  for (const FlatPoint corner : corners) {
    x.push_back(corner.x);
    y.push_back(-corner.y);
  }
  // Downwards, y is measured the other way.
  const auto across = ways_along(all.lo.x, all.hi.x, image_width - overlap, overlap, x);
  const auto down = ways_along(-all.hi.y, -all.lo.y, image_height - overlap, overlap, y);
  std::pair<std::size_t, std::size_t> best{std::size_t(-1), 0};
  for (const Along& columns : across)
    for (const Along& rows : down) {
      std::pair<std::size_t, std::size_t> own{0, 0};
      for (int c = 0; c < columns.count; ++c)
        for (int r = 0; r < rows.count; ++r) {
          const auto [left, right] = columns.cell(c);
          const auto [top, bottom] = rows.cell(r);
          const double held = ink_in(ink, {{left, -bottom}, {right, -top}});
          own.first += held > 1e-6;
          own.second += held > 1e-6 && held < 10;  // mm: what is not worth a sheet
        }
      best = std::min(best, own);
    }
  return best;
}

FlatPoint drawn_point(std::mt19937_64& rng, FlatPoint lo, FlatPoint hi) {
  return {test::drawn(rng, lo.x, hi.x), test::drawn(rng, lo.y, hi.y)};
}

/// An outline, a line into nowhere and a short one somewhere.
Ink drawn_ink(std::mt19937_64& rng, std::vector<FlatPoint>& corners) {
  Ink ink;
  const FlatPoint lo = drawn_point(rng, {0, 0}, {20, 20});
  const FlatPoint hi = lo + drawn_point(rng, {20, 15}, {90, 55});
  const FlatPoint notch = drawn_point(rng, lo, hi);
  corners = {lo, {hi.x, lo.y}, {hi.x, notch.y}, notch, {notch.x, hi.y}, {lo.x, hi.y}};
  for (std::size_t k = 0; k < corners.size(); ++k)
    ink.add({corners[k], corners[(k + 1) % corners.size()]});
  ink.add({hi, hi + drawn_point(rng, {-5, -5}, {30, 20})});
  const FlatPoint at = drawn_point(rng, {0, 0}, {110, 70});
  ink.add({at, at + drawn_point(rng, {-4, -4}, {4, 4})});
  return ink;
}

TEST_CASE("fewest_tiles (1) (2): as few tiles and slivers as clipping every place finds") {
  test::for_drawn_cases("fewest-tiles", 5, [](std::mt19937_64& rng) {
    std::vector<FlatPoint> corners;
    const Ink ink = drawn_ink(rng, corners);
    const double width = test::drawn(rng, 25, 40), height = test::drawn(rng, 22, 34);
    const double overlap = test::drawn(rng, 3, 9);
    for (const bool turned : {false, true}) {
      const double w = turned ? height : width, h = turned ? width : height;
      const TileGrid grid = fewest_tiles(ink, {corners, {}}, w, h, overlap);
      const auto [tiles, held_little] = by_clipping(ink, corners, w, h, overlap);
      CHECK(grid.count() == tiles);
      CHECK(slivers(grid, ink) == held_little);
    }
  });
}

TEST_CASE("fewest_tiles: the cells that hold ink, no other, and all of it") {
  test::for_drawn_cases("tiles-with-ink", 60, [](std::mt19937_64& rng) {
    std::vector<FlatPoint> corners;
    const Ink ink = drawn_ink(rng, corners);
    const double overlap = test::drawn(rng, 3, 9);
    const TileGrid grid = fewest_tiles(ink, {corners, {}}, test::drawn(rng, 25, 60),
                                       test::drawn(rng, 22, 60), overlap);
    double all = 0, held = 0;
    std::size_t little = 0;
    for (const InkStroke& stroke : ink.strokes) all += apart(stroke.a, stroke.b);
    for (std::size_t c = 0; c < grid.columns; ++c)
      for (std::size_t r = 0; r < grid.rows; ++r) {
        const double own = ink_in(ink, grid.cell(c, r));
        CHECK(grid.has(c, r) == (own > 1e-6));
        held += own;
        little += own > 1e-6 && own < 10;
      }
    CHECK(held == doctest::Approx(all).epsilon(1e-4));
    CHECK(slivers(grid, ink) == little);
  });
}

TEST_CASE("fewest_tiles: a tile's edge is put beside a corner where that saves a sheet") {
  // Worked by hand: images of 30 mm, 5 mm overlap, so a step of 25 mm. Two uprights 51.0 mm apart
  // and 4 mm of white at the outer edges want 55 mm: two tiles hold 25 + 25 + 5. A third upright
  // midway leaves no choice. With edges on whole millimeters alone the same comes out.
  Ink ink;
  for (const double x : {10.3, 61.3}) ink.add({{x, 0}, {x, 20}});
  const TileGrid grid = fewest_tiles(ink, {{{10.3, 0}, {61.3, 0}}, {}}, 30, 30, 5);
  CHECK(grid.columns == 2);
  CHECK(grid.count() == 2);
}

TEST_CASE("fewest_tiles: of places as good, that which cuts fewest of the boxes to keep whole") {
  Ink ink;
  ink.add({{0, 0}, {70, 0}});
  // 70 mm and the clear take two images of 50 mm; a box astride the middle is left whole.
  const plane::Box box{{32, 1}, {40, 4}};
  const TileGrid grid = fewest_tiles(ink, {{}, {box}}, 50, 40, 5);
  REQUIRE(grid.count() == 2);
  CHECK((grid.cell(0, 0).holds(box) || grid.cell(1, 0).holds(box)));
}

}  // namespace
}  // namespace swathe
