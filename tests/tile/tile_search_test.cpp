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

void add_box(Ink& ink, FlatPoint lo, FlatPoint hi) {
  const FlatPoint corners[] = {lo, {hi.x, lo.y}, hi, {lo.x, hi.y}};
  for (int k = 0; k < 4; ++k) ink.add({corners[k], corners[(k + 1) % 4]});
}

TEST_CASE("nearly empty tiles: what lies between their lines, in strips, by hand") {
  // Two cells of 100 by 100 mm: a frame of 60 by 60 mm is 0.36 of the first (12 strips of 60 mm),
  // one of 30 by 30 mm 0.09 of the second.
  Ink ink;
  add_box(ink, {20, -80}, {80, -20.01});
  add_box(ink, {120, -50}, {150, -20.01});
  TileGrid grid{{0, 0}, 100, 100, 0, 2, 1, {1, 1}};
  CHECK(nearly_empty(grid, ink) == 1);
  // 36 by 36 mm: 8 strips of 36 mm are 0.288 where the frame begins and ends within strips.
  add_box(ink, {120, -56}, {156, -20.01});
  CHECK(nearly_empty(grid, ink) == 0);
  // Corners of the same frame: full between them, up and down and across.
  Ink corners;
  add_box(corners, {20, -80}, {80, -20.01});
  for (const FlatPoint at :
       {FlatPoint{110, -90}, FlatPoint{186, -90}, FlatPoint{110, -14}, FlatPoint{186, -14}})
    add_box(corners, at, at + FlatPoint{4, 4});
  CHECK(nearly_empty(grid, corners) == 0);  // 2 strips of 80 mm: 0.16
  // Not counted: a cell without ink.
  grid.used = {1, 0};
  CHECK(nearly_empty(grid, ink) == 0);
}

TEST_CASE("fewest_tiles: a place with no tile nearly empty goes before one nearer the middle") {
  // 190 mm of a strip 60 mm high, then a tip 100 mm long and 8 mm high; tiles of 150 mm, 10 mm of
  // them shared, so three. In their middle the last holds 80 mm of the tip alone: 2 strips of 5 mm,
  // 0.05 of it. Some 40 mm further left the first still has 30 by 60 mm, 0.13 of it.
  Ink ink;
  add_box(ink, {0, 0}, {190, 60});
  add_box(ink, {190, 26}, {290, 34});
  const TileGrid grid = fewest_tiles(ink, {{}, {}}, 150, 100, 10);
  CHECK(grid.count() == 3);
  CHECK(nearly_empty(grid, ink) == 0);
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
  const TileGrid grid = fewest_tiles(ink, {{}, {{box}}}, 50, 40, 5);
  REQUIRE(grid.count() == 2);
  CHECK((grid.cell(0, 0).holds(box) || grid.cell(1, 0).holds(box)));
}

TEST_CASE("fewest_tiles: of two boxes one of which is cut, the one of more weight is kept whole") {
  Ink ink;
  ink.add({{0, 0}, {70, 0}});
  // Worked by hand: ink and clear lie from -2 to 72. The first of two images of 50 mm with 5 mm
  // overlap starts at -23 at the least, for the second to reach 72, so that the edge between them
  // lies from 22 to 43: in one box or in the other.
  const plane::Box left{{21, 1}, {33, 4}}, right{{32, 1}, {44, 4}};
  for (const bool is_left : {true, false}) {
    const plane::Box& heavy = is_left ? left : right;
    const TileWishes wishes{{}, {{left, is_left ? 2 : 1}, {right, is_left ? 1 : 2}}};
    const TileGrid grid = fewest_tiles(ink, wishes, 50, 40, 5);
    REQUIRE(grid.count() == 2);
    CHECK((grid.cell(0, 0).holds(heavy) || grid.cell(1, 0).holds(heavy)));
  }
}

TEST_CASE("fewest_tiles: a box of a weight counts as so many boxes") {
  test::for_drawn_cases("weighty-boxes", 40, [](std::mt19937_64& rng) {
    std::vector<FlatPoint> corners;
    const Ink ink = drawn_ink(rng, corners);
    TileWishes once{corners, {}}, often{corners, {}};
    for (int k = 0; k < 12; ++k) {
      const FlatPoint lo = drawn_point(rng, {0, 0}, {90, 60});
      const plane::Box box{lo, lo + drawn_point(rng, {1, 1}, {14, 8})};
      once.whole.push_back({box, k % 3 + 1});
      for (int n = 0; n < k % 3 + 1; ++n) often.whole.push_back({box});
    }
    const double width = test::drawn(rng, 25, 60), height = test::drawn(rng, 22, 60);
    const TileGrid a = fewest_tiles(ink, once, width, height, 4);
    const TileGrid b = fewest_tiles(ink, often, width, height, 4);
    CHECK(a.start == b.start);
    CHECK(a.used == b.used);
  });
}

/// How many of the boxes a grid cuts, counted one by one.
int count_cut(const TileGrid& grid, const std::vector<WholeBox>& boxes) {
  int count = 0;
  for (const auto& [box, weight] : boxes) {
    bool whole = false;
    for (std::size_t r = 0; r < grid.rows; ++r)
      for (std::size_t c = 0; c < grid.columns; ++c) whole = whole || grid.cell(c, r).holds(box);
    count += whole ? 0 : weight;
  }
  return count;
}

TEST_CASE(
    "fewest_tiles: no whole millimeter gives as few tiles and slivers and cuts far fewer boxes") {
  // Every place of the first tile a millimeter apart, its tiles found by clipping, its boxes
  // counted one by one.
  test::for_drawn_cases("fewest-cut-boxes", 4, [](std::mt19937_64& rng) {
    std::vector<FlatPoint> corners;
    Ink ink = drawn_ink(rng, corners);
    std::vector<WholeBox> boxes;
    for (int k = 0; k < 8; ++k) {
      const FlatPoint lo = drawn_point(rng, {0, 0}, {90, 60});
      boxes.push_back({{lo, lo + drawn_point(rng, {1, 1}, {14, 8})}, k % 2 + 1});
      ink.add({lo, boxes.back().box.hi});  // no box lies where there is no tile
    }
    const double width = test::drawn(rng, 30, 45), height = test::drawn(rng, 30, 45);
    constexpr double kOverlap = 4;
    const TileGrid best = fewest_tiles(ink, {{}, boxes}, width, height, kOverlap);
    const std::pair own{best.count(), slivers(best, ink)};
    // So many more may be cut for the sake of a tile that is not nearly empty.
    const int most_more = slivers(best, ink) == 0 ? 12 : 0;
    const int cut = count_cut(best, boxes);
    const plane::Box all = ink.bounds().grown(2);
    const auto across = ways_along(all.lo.x, all.hi.x, width - kOverlap, kOverlap, {});
    const auto down = ways_along(-all.hi.y, -all.lo.y, height - kOverlap, kOverlap, {});
    for (const Along& columns : across)
      for (const Along& rows : down) {
        TileGrid grid{{columns.start, -rows.start},
                      columns.step,
                      rows.step,
                      kOverlap,
                      static_cast<std::size_t>(columns.count),
                      static_cast<std::size_t>(rows.count),
                      {}};
        for (std::size_t r = 0; r < grid.rows; ++r)
          for (std::size_t c = 0; c < grid.columns; ++c)
            grid.used.push_back(ink_in(ink, grid.cell(c, r)) > 1e-6);
        if (std::pair(grid.count(), slivers(grid, ink)) == own)
          CHECK(count_cut(grid, boxes) + most_more >= cut);
      }
  });
}

TEST_CASE("fewest_tiles (3): nothing where even the fewest are too many") {
  int tried = 0;
  test::for_drawn_cases("most-tiles", 40, [&](std::mt19937_64& rng) {
    std::vector<FlatPoint> corners;
    const Ink ink = drawn_ink(rng, corners);
    const double width = test::drawn(rng, 25, 40), height = test::drawn(rng, 22, 34);
    const TileGrid grid = fewest_tiles(ink, {corners, {}}, width, height, 4);
    if (grid.count() < 2) return;
    ++tried;
    const TileGrid enough = fewest_tiles(ink, {corners, {}}, width, height, 4, grid.count());
    CHECK(enough.start == grid.start);
    CHECK(enough.used == grid.used);
    CHECK(fewest_tiles(ink, {corners, {}}, width, height, 4, grid.count() - 1).used.empty());
  });
  CHECK(tried > 20);
}

}  // namespace
}  // namespace swathe
