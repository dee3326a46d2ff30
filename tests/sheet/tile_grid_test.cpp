#include "sheet/tile_grid.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <tuple>

#include "support/drawn.hpp"

namespace swathe {
namespace {

/// Whether any of the stretch from `a` to `b` lies in the box: the box cuts it down side by side.
bool touches(const Box& box, FlatPoint a, FlatPoint b) {
  double from = 0, to = 1;
  const auto cut = [&](double at, double step, double lo, double hi) {
    if (step == 0) {
      if (at < lo || at > hi) to = -1;
      return;
    }
    from = std::max(from, std::min((lo - at) / step, (hi - at) / step));
    to = std::min(to, std::max((lo - at) / step, (hi - at) / step));
  };
  cut(a.x, b.x - a.x, box.lo.x, box.hi.x);
  cut(a.y, b.y - a.y, box.lo.y, box.hi.y);
  return from <= to;
}

/// The plain search: every place of the first tile, every tile there, every stroke.
TileGrid plain_search(const Ink& ink, const std::vector<Box>& whole, double image_width,
                      double image_height, double overlap) {
  constexpr double kStep = 5, kClear = 2;
  Box all;
  for (const InkStroke& stroke : ink.strokes) {
    all.cover(stroke.a);
    all.cover(stroke.b);
  }
  all = all.grown(kClear);
  TileGrid grid{{}, image_width - overlap, image_height - overlap, overlap, 0, 0, {}}, best = grid;
  std::tuple<std::size_t, int, double> best_cost{std::size_t(-1), 0, 0};
  for (double right = 0; right < grid.step_x; right += kStep)
    for (double down = 0; down < grid.step_y; down += kStep) {
      grid.start = {all.lo.x - right, all.hi.y + down};
      const auto tiles = [&](double long_way, double step) {
        return static_cast<std::size_t>(std::max(1.0, std::ceil((long_way - overlap) / step)));
      };
      grid.columns = tiles(all.hi.x - grid.start.x, grid.step_x);
      grid.rows = tiles(grid.start.y - all.lo.y, grid.step_y);
      grid.used.assign(grid.columns * grid.rows, 0);
      for (std::size_t row = 0; row < grid.rows; ++row)
        for (std::size_t column = 0; column < grid.columns; ++column) {
          const Box cell = grid.cell(column, row);
          for (const InkStroke& stroke : ink.strokes)
            if (touches(cell, stroke.a, stroke.b)) grid.used[row * grid.columns + column] = 1;
        }
      int cut = 0;
      for (const Box& box : whole) {
        bool held = false;
        for (std::size_t row = 0; row < grid.rows; ++row)
          for (std::size_t column = 0; column < grid.columns; ++column)
            held = held || (grid.has(column, row) && grid.cell(column, row).holds(box));
        cut += held ? 0 : 1;
      }
      const double over_x = static_cast<double>(grid.columns) * grid.step_x + overlap - all.width();
      const double over_y = static_cast<double>(grid.rows) * grid.step_y + overlap - all.height();
      const double off = std::abs(right - over_x / 2) + std::abs(down - over_y / 2);
      const std::tuple cost{grid.count(), cut, off};
      if (!(cost < best_cost)) continue;
      best = grid;
      best_cost = cost;
    }
  return best;
}

FlatPoint drawn_point(std::mt19937_64& rng, FlatPoint lo, FlatPoint hi) {
  return {test::drawn(rng, lo.x, hi.x), test::drawn(rng, lo.y, hi.y)};
}

}  // namespace

TEST_CASE("fewest_tiles: the grid that the plain search finds") {
  test::for_drawn_cases("fewest-tiles", 40, [](std::mt19937_64& rng) {
    Ink ink;
    std::vector<Box> whole;
    // Curves of short strokes, some strokes long, upright or level, with empty places between.
    const int curves = static_cast<int>(rng() % 6) + 1;
    for (int n = 0; n < curves; ++n) {
      const FlatPoint middle = drawn_point(rng, {0, 0}, {260, 160});
      const double across = test::drawn(rng, 2, 60), up = test::drawn(rng, 2, 60);
      const auto at = [&](int k) {
        return middle + FlatPoint{across * std::cos(0.1 * k), up * std::sin(0.13 * k)};
      };
      const int strokes = static_cast<int>(rng() % 40);
      for (int k = 0; k < strokes; ++k) ink.add({at(k), at(k + 1)});
    }
    for (int n = 0; n < 3; ++n) {
      const FlatPoint a = drawn_point(rng, {0, 0}, {260, 160});
      FlatPoint b = drawn_point(rng, {0, 0}, {260, 160});
      if (n == 1) b.x = a.x;
      if (n == 2) b.y = a.y;
      ink.add({a, b});
    }
    const int boxes = static_cast<int>(rng() % 8);
    for (int n = 0; n < boxes; ++n) {
      const FlatPoint lo = drawn_point(rng, {0, 0}, {240, 150});
      whole.push_back({lo, lo + drawn_point(rng, {2, 2}, {30, 8})});
    }
    const double width = test::drawn(rng, 50, 90), height = test::drawn(rng, 45, 90);
    const double overlap = test::drawn(rng, 3, 12);
    const TileGrid fast = fewest_tiles(ink, whole, width, height, overlap);
    const TileGrid plain = plain_search(ink, whole, width, height, overlap);
    CHECK(fast.start == plain.start);
    CHECK(fast.columns == plain.columns);
    CHECK(fast.rows == plain.rows);
    CHECK(fast.used == plain.used);
  });
}

}  // namespace swathe
