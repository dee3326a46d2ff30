#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "swathe/plane/point.hpp"

namespace swathe {

/// A straight piece of what is drawn.
struct InkStroke {
  FlatPoint a, b;
};

/// What is drawn, in short runs of strokes that lie close together.
struct Ink {
  struct Cluster {
    std::size_t first, last;  ///< of the strokes
    Box box;
  };
  std::vector<InkStroke> strokes;
  std::vector<Cluster> clusters;

  void add(InkStroke stroke);
};

/// What of the whole page each tile shows, and which tiles there are.
struct TileGrid {
  FlatPoint start;        ///< upper left corner of the first tile
  double step_x, step_y;  ///< from tile to tile
  double overlap;         ///< shown past a tile's own cell, to the right and below
  std::size_t columns, rows;
  std::vector<char> used;  ///< row by row from the top; tiles with ink

  bool has(std::size_t column, std::size_t row) const {
    return column < columns && row < rows && used[row * columns + column];
  }
  std::size_t count() const;
  /// The tile's own part of the page. The last column's and row's are wider by the overlap that
  /// they share with nobody.
  Box cell(std::size_t column, std::size_t row) const;
  /// The cell and the strips shared with the neighbours to the right and below that there are.
  Box image(std::size_t column, std::size_t row) const;
};

/// "B2": column letter and row number.
std::string tile_name(std::size_t column, std::size_t row);

/// The grid of fewest tiles for images of that size; of equal ones that which cuts fewest of the
/// `whole` boxes, then the one that lies most in the middle.
TileGrid fewest_tiles(const Ink& ink, const std::vector<Box>& whole, double image_width,
                      double image_height, double overlap);

}  // namespace swathe
