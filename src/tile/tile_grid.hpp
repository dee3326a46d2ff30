#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "swathe/plane.hpp"

namespace swathe {

/// What of the whole page each tile shows, and which tiles there are.
struct TileGrid {
  FlatPoint start;                ///< upper left corner of the first tile
  double step_x = 0, step_y = 0;  ///< from tile to tile
  double overlap = 0;             ///< shown past a tile's own cell, to the right and below
  std::size_t columns = 0, rows = 0;
  std::vector<char> used;  ///< row by row from the top; tiles with ink

  bool has(std::size_t column, std::size_t row) const {
    return column < columns && row < rows && used[row * columns + column];
  }
  std::size_t count() const;
  /// The tile's own part of the page. The last column's and row's are wider by the overlap that
  /// they share with nobody.
  plane::Box cell(std::size_t column, std::size_t row) const;
  /// The cell and the strips shared with the neighbors to the right and below that there are.
  plane::Box image(std::size_t column, std::size_t row) const;
  /// The column and row of the cell that a place lies in; the nearest of a place off the grid.
  std::size_t column_of(double x) const { return index_of(x - start.x, step_x, columns); }
  std::size_t row_of(double y) const { return index_of(start.y - y, step_y, rows); }

 private:
  static std::size_t index_of(double along, double step, std::size_t count) {
    return static_cast<std::size_t>(std::clamp(along / step, 0.0, static_cast<double>(count - 1)));
  }
};

/// The order the tiles are glued in, from 1, a number a cell; 0 where there is no tile.
///
/// Holds (tile_grid_test.cpp): (1) every tile but the first of a piece joins one with a lower
///   number; (2) it comes after its left and upper neighbors, on which it is laid, wherever those
///   can be had without breaking (1).
std::vector<std::size_t> glue_order(const TileGrid& grid);

/// What a tile is called: its number in that order.
std::string tile_name(const TileGrid& grid, std::size_t column, std::size_t row);

}  // namespace swathe
