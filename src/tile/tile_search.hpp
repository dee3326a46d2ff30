#pragma once

#include <cstddef>
#include <limits>
#include <vector>

#include "tile/tile_grid.hpp"

namespace swathe {

/// A straight piece of what is drawn.
struct InkStroke {
  FlatPoint a, b;
};

/// What is drawn, in short runs of strokes that lie close together.
struct Ink {
  struct Cluster {
    std::size_t first, last;  ///< of the strokes
    plane::Box box;
  };
  std::vector<InkStroke> strokes;
  std::vector<Cluster> clusters;

  void add(InkStroke stroke);
  plane::Box bounds() const;
};

/// Something on the page that is best not cut by a tile's edge.
struct WholeBox {
  plane::Box box;
  int weight = 1;  ///< how many boxes it counts for
};

/// What the search is told of a page besides its ink.
struct TileWishes {
  std::vector<FlatPoint> corners;  ///< of the outline: tile edges are tried beside each
  std::vector<WholeBox> whole;
};

/// A tile with less ink than that is a sliver.
inline constexpr double kSliver = 10.0;

/// How many of the grid's tiles hold less than kSliver of ink each.
std::size_t slivers(const TileGrid& grid, const Ink& ink);

/// In strips of 5 mm, across or up and down, each full from its first ink to its last, a tile that
/// is not nearly empty is fuller than that.
inline constexpr double kNearlyEmpty = 0.12;

/// How many of the grid's tiles are nearly empty; counted up to `most`.
std::size_t nearly_empty(const TileGrid& grid, const Ink& ink,
                         std::size_t most = std::numeric_limits<std::size_t>::max());

/// The grid of fewest tiles for images of that size; of equal ones that with fewest slivers, then
/// that which cuts fewest of the boxes to keep whole, then the one that lies most in the middle.
/// One with fewer tiles that are nearly empty goes before it, if it cuts few boxes more: so many
/// are tried at most, each some way from all others.
///
/// It tries every place of the first tile on a grid of 1 mm, and those that put an edge of a tile
/// 2 mm to either side of a corner of the outline.
///
/// Holds (tile_search_test.cpp): (1) no other place tried has fewer tiles, found by clipping all
///   ink to every cell of every place; (2) nor as few with fewer slivers; (3) where even the fewest
///   are more than `most`, the grid is empty, and is found to be so sooner.
TileGrid fewest_tiles(const Ink& ink, const TileWishes& wishes, double image_width,
                      double image_height, double overlap,
                      std::size_t most = std::numeric_limits<std::size_t>::max());

}  // namespace swathe
