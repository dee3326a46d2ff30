#pragma once

#include <cstddef>
#include <optional>

#include "tile/tile_grid.hpp"
#include "tile/tiles.hpp"

namespace swathe {

/// The height of the strip for a tile's words below its image.
double footer_height(double printable_width_mm, const TileOptions& options);

/// Everything a tile says about itself and how to put it in its place: name, page map, TOP, when it
/// is glued, which face is up, what to cut, long grain, check scales.
void draw_footer(Drawing& onto, const Font& labels, const plane::Box& strip, const TileGrid& grid,
                 std::size_t column, std::size_t row, const TileOptions& options);

/// The room for a plan of all tiles with their numbers; nothing where the page map has them.
std::optional<FlatPoint> plan_size(const Font& labels, const TileGrid& grid, double strip_width);
/// The plan itself, its lower left corner at the origin.
Drawing plan_of(const Font& labels, const TileGrid& grid);

}  // namespace swathe
