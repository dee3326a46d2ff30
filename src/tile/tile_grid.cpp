#include "tile/tile_grid.hpp"

#include <algorithm>

namespace swathe {

std::size_t TileGrid::count() const {
  return static_cast<std::size_t>(std::ranges::count(used, 1));
}

plane::Box TileGrid::cell(std::size_t column, std::size_t row) const {
  const double left = start.x + static_cast<double>(column) * step_x;
  const double top = start.y - static_cast<double>(row) * step_y;
  return {{left, top - step_y - (row + 1 == rows ? overlap : 0.0)},
          {left + step_x + (column + 1 == columns ? overlap : 0.0), top}};
}

plane::Box TileGrid::image(std::size_t column, std::size_t row) const {
  plane::Box box = cell(column, row);
  if (has(column + 1, row)) box.hi.x += overlap;
  if (has(column, row + 1)) box.lo.y -= overlap;
  return box;
}

std::vector<std::size_t> glue_order(const TileGrid& grid) {
  std::vector<std::size_t> order(grid.used.size(), 0);
  const auto glued = [&](std::size_t column, std::size_t row) {
    return grid.has(column, row) && order[row * grid.columns + column] > 0;
  };
  // How well a tile suits next: 0 it is laid on none still to come, 1 it joins one, 2 neither.
  // Left of the first column and above the first row the numbers wrap round, past any grid.
  const auto rank = [&](std::size_t c, std::size_t r) {
    const bool joins = glued(c - 1, r) || glued(c, r - 1) || glued(c + 1, r) || glued(c, r + 1);
    const bool waits =
        (grid.has(c - 1, r) && !glued(c - 1, r)) || (grid.has(c, r - 1) && !glued(c, r - 1));
    return !joins ? 2 : waits ? 1 : 0;
  };
  for (std::size_t number = 1; number <= grid.count(); ++number) {
    std::size_t next = grid.used.size();
    int best = 3;
    for (std::size_t k = 0; k < grid.used.size(); ++k) {
      if (!grid.used[k] || order[k] > 0) continue;
      const int own = rank(k % grid.columns, k / grid.columns);
      if (own >= best) continue;
      best = own;
      next = k;
    }
    order[next] = number;
  }
  return order;
}

std::string tile_name(const TileGrid& grid, std::size_t column, std::size_t row) {
  return std::to_string(glue_order(grid)[row * grid.columns + column]);
}

}  // namespace swathe
