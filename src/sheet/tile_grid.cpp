#include "sheet/tile_grid.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace swathe {
namespace {

constexpr double kSearchStep = 5.0;  ///< between places tried for the first tile
constexpr double kClusterSize = 12.0;
constexpr double kClear = 2.0;  ///< outer lines stay that far from the outer tiles' edges

std::size_t tiles_along(double length, double step, double overlap) {
  return static_cast<std::size_t>(std::max(1.0, std::ceil((length - overlap) / step - 1e-9)));
}

std::size_t index_of(double along, double step, std::size_t count) {
  const double index = std::floor(along / step);
  return static_cast<std::size_t>(std::clamp(index, 0.0, static_cast<double>(count - 1)));
}

/// Marks every cell a stroke passes through.
void mark(TileGrid& grid, const InkStroke& stroke) {
  const auto column = [&](double x) {
    return index_of(x - grid.start.x, grid.step_x, grid.columns);
  };
  const auto row = [&](double y) { return index_of(grid.start.y - y, grid.step_y, grid.rows); };
  const auto put = [&](std::size_t c, std::size_t r) { grid.used[r * grid.columns + c] = 1; };
  const std::size_t c0 = column(stroke.a.x), c1 = column(stroke.b.x);
  const std::size_t r0 = row(stroke.a.y), r1 = row(stroke.b.y);
  if (c0 == c1) {
    for (std::size_t r = std::min(r0, r1); r <= std::max(r0, r1); ++r) put(c0, r);
    return;
  }
  // The stretch of the stroke within each column.
  const FlatPoint &left = c0 < c1 ? stroke.a : stroke.b, &right = c0 < c1 ? stroke.b : stroke.a;
  const double slope = (right.y - left.y) / (right.x - left.x);
  for (std::size_t c = std::min(c0, c1); c <= std::max(c0, c1); ++c) {
    const double from = std::max(left.x, grid.start.x + static_cast<double>(c) * grid.step_x);
    const double to =
        c + 1 < grid.columns
            ? std::min(right.x, grid.start.x + static_cast<double>(c + 1) * grid.step_x)
            : right.x;
    const std::size_t one = row(left.y + slope * (from - left.x));
    const std::size_t other = row(left.y + slope * (to - left.x));
    for (std::size_t r = std::min(one, other); r <= std::max(one, other); ++r) put(c, r);
  }
}

void mark_all(TileGrid& grid, const Ink& ink) {
  grid.used.assign(grid.columns * grid.rows, 0);
  for (const Ink::Cluster& cluster : ink.clusters) {
    const std::size_t left = index_of(cluster.box.lo.x - grid.start.x, grid.step_x, grid.columns);
    const std::size_t right = index_of(cluster.box.hi.x - grid.start.x, grid.step_x, grid.columns);
    const std::size_t top = index_of(grid.start.y - cluster.box.hi.y, grid.step_y, grid.rows);
    const std::size_t bottom = index_of(grid.start.y - cluster.box.lo.y, grid.step_y, grid.rows);
    if (left == right && top == bottom) {
      grid.used[top * grid.columns + left] = 1;
    } else {
      for (std::size_t k = cluster.first; k < cluster.last; ++k) mark(grid, ink.strokes[k]);
    }
  }
}

bool is_whole(const TileGrid& grid, const Box& box) {
  const FlatPoint middle = box.middle();
  const std::size_t c = index_of(middle.x - grid.start.x, grid.step_x, grid.columns);
  const std::size_t r = index_of(grid.start.y - middle.y, grid.step_y, grid.rows);
  return grid.has(c, r) && grid.cell(c, r).holds(box);
}

}  // namespace

void Ink::add(InkStroke stroke) {
  Box box;
  box.cover(stroke.a);
  box.cover(stroke.b);
  strokes.push_back(stroke);
  if (!clusters.empty()) {
    Box both = clusters.back().box;
    both.cover(box);
    if (both.width() <= kClusterSize && both.height() <= kClusterSize) {
      clusters.back().last = strokes.size();
      clusters.back().box = both;
      return;
    }
  }
  clusters.push_back({strokes.size() - 1, strokes.size(), box});
}

std::size_t TileGrid::count() const {
  return static_cast<std::size_t>(std::ranges::count(used, 1));
}

Box TileGrid::cell(std::size_t column, std::size_t row) const {
  const double left = start.x + static_cast<double>(column) * step_x;
  const double top = start.y - static_cast<double>(row) * step_y;
  return {{left, top - step_y - (row + 1 == rows ? overlap : 0.0)},
          {left + step_x + (column + 1 == columns ? overlap : 0.0), top}};
}

Box TileGrid::image(std::size_t column, std::size_t row) const {
  Box box = cell(column, row);
  if (has(column + 1, row)) box.hi.x += overlap;
  if (has(column, row + 1)) box.lo.y -= overlap;
  return box;
}

std::string tile_name(std::size_t column, std::size_t row) {
  std::string letters;
  for (std::size_t c = column + 1; c > 0; c = (c - 1) / 26)
    letters.insert(letters.begin(), static_cast<char>('A' + (c - 1) % 26));
  return letters + std::to_string(row + 1);
}

TileGrid fewest_tiles(const Ink& ink, const std::vector<Box>& whole, double image_width,
                      double image_height, double overlap) {
  Box all;
  for (const Ink::Cluster& cluster : ink.clusters) all.cover(cluster.box);
  if (all.empty()) all.cover(FlatPoint{0, 0});
  all = all.grown(kClear);

  TileGrid grid{{}, image_width - overlap, image_height - overlap, overlap, 0, 0, {}};
  TileGrid best;
  std::tuple<std::size_t, std::size_t, double> best_cost;
  bool found = false;
  for (double shift_x = 0; shift_x < grid.step_x; shift_x += kSearchStep)
    for (double shift_y = 0; shift_y < grid.step_y; shift_y += kSearchStep) {
      grid.start = {all.lo.x - shift_x, all.hi.y + shift_y};
      grid.columns = tiles_along(all.hi.x - grid.start.x, grid.step_x, overlap);
      grid.rows = tiles_along(grid.start.y - all.lo.y, grid.step_y, overlap);
      mark_all(grid, ink);
      const std::size_t count = grid.count();
      if (found && count > std::get<0>(best_cost)) continue;
      const auto cut = static_cast<std::size_t>(
          std::ranges::count_if(whole, [&](const Box& box) { return !is_whole(grid, box); }));
      const double slack_x =
          static_cast<double>(grid.columns) * grid.step_x + overlap - all.width();
      const double slack_y = static_cast<double>(grid.rows) * grid.step_y + overlap - all.height();
      const double off = std::abs(shift_x - 0.5 * slack_x) + std::abs(shift_y - 0.5 * slack_y);
      const std::tuple cost{count, cut, off};
      if (found && !(cost < best_cost)) continue;
      found = true;
      best = grid;
      best_cost = cost;
    }
  return best;
}

}  // namespace swathe
