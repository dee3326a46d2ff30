#include "sheet/tile_grid.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

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

std::size_t column_of(const TileGrid& grid, double x) {
  return index_of(x - grid.start.x, grid.step_x, grid.columns);
}
std::size_t row_of(const TileGrid& grid, double y) {
  return index_of(grid.start.y - y, grid.step_y, grid.rows);
}

/// A stretch of ink downwards.
struct Stretch {
  double lo, hi;
};

/// The same y in as few stretches as say it, rising.
void join(std::vector<Stretch>& stretches) {
  if (stretches.empty()) return;
  std::ranges::sort(stretches, {}, &Stretch::lo);
  std::size_t last = 0;
  for (const Stretch next : stretches) {
    if (next.lo > stretches[last].hi) stretches[++last] = next;
    stretches[last].hi = std::max(stretches[last].hi, next.hi);
  }
  stretches.resize(last + 1);
}

/// Where there is ink, column by column. It depends on where the columns start and not on the rows,
/// so it is worked out once for all places of the first row.
class ColumnInk {
 public:
  explicit ColumnInk(const Ink& ink) : ink_(ink) {
    for (const Ink::Cluster& cluster : ink.clusters) {
      std::vector<Stretch> down;
      for (std::size_t k = cluster.first; k < cluster.last; ++k) {
        const auto [lo, hi] = std::minmax(ink.strokes[k].a.y, ink.strokes[k].b.y);
        down.push_back({lo, hi});
      }
      join(down);
      clusters_.push_back(std::move(down));
    }
  }

  /// For a grid's start, step and number of columns.
  void set_columns(const TileGrid& grid) {
    columns_.resize(grid.columns);
    for (std::vector<Stretch>& column : columns_) column.clear();
    for (std::size_t n = 0; n < clusters_.size(); ++n) {
      const Ink::Cluster& cluster = ink_.clusters[n];
      const std::size_t left = column_of(grid, cluster.box.lo.x);
      if (left == column_of(grid, cluster.box.hi.x)) {
        columns_[left].insert(columns_[left].end(), clusters_[n].begin(), clusters_[n].end());
      } else {
        for (std::size_t k = cluster.first; k < cluster.last; ++k) add(grid, ink_.strokes[k]);
      }
    }
    for (std::vector<Stretch>& column : columns_) join(column);
  }

  /// Marks every cell that has ink.
  void mark(TileGrid& grid) const {
    grid.used.assign(grid.columns * grid.rows, 0);
    for (std::size_t c = 0; c < grid.columns; ++c)
      for (const Stretch stretch : columns_[c])
        for (std::size_t r = row_of(grid, stretch.hi); r <= row_of(grid, stretch.lo); ++r)
          grid.used[r * grid.columns + c] = 1;
  }

 private:
  /// The stretch of the stroke within each column.
  void add(const TileGrid& grid, const InkStroke& stroke) {
    const bool rightwards = stroke.a.x < stroke.b.x;
    const FlatPoint &left = rightwards ? stroke.a : stroke.b,
                    &right = rightwards ? stroke.b : stroke.a;
    const std::size_t first = column_of(grid, left.x), last = column_of(grid, right.x);
    const double slope = first == last ? 0.0 : (right.y - left.y) / (right.x - left.x);
    double from = left.y;
    for (std::size_t c = first; c < last; ++c) {
      const double edge = grid.start.x + static_cast<double>(c + 1) * grid.step_x;
      const double to = left.y + slope * (edge - left.x);
      columns_[c].push_back({std::min(from, to), std::max(from, to)});
      from = to;
    }
    columns_[last].push_back({std::min(from, right.y), std::max(from, right.y)});
  }

  const Ink& ink_;
  std::vector<std::vector<Stretch>> clusters_;  ///< what each cluster covers
  std::vector<std::vector<Stretch>> columns_;
};

bool is_whole(const TileGrid& grid, const Box& box) {
  const FlatPoint middle = box.middle();
  const std::size_t c = column_of(grid, middle.x), r = row_of(grid, middle.y);
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
  ColumnInk columns(ink);
  for (double shift_x = 0; shift_x < grid.step_x; shift_x += kSearchStep) {
    grid.start.x = all.lo.x - shift_x;
    grid.columns = tiles_along(all.hi.x - grid.start.x, grid.step_x, overlap);
    columns.set_columns(grid);
    for (double shift_y = 0; shift_y < grid.step_y; shift_y += kSearchStep) {
      grid.start.y = all.hi.y + shift_y;
      grid.rows = tiles_along(grid.start.y - all.lo.y, grid.step_y, overlap);
      columns.mark(grid);
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
  }
  return best;
}

}  // namespace swathe
