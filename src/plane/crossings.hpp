#pragma once

#include <cstddef>

#include "plane/clip.hpp"
#include "swathe/plane.hpp"

namespace swathe::plane {

/// How many pairs of the outlines' edges cross, touch or lie on each other; the corner that two
/// neighbors share does not count. All is rounded to the grid first, as unite() does. Counting
/// stops at most + 1. The time that unite() takes grows with this number.
///
/// Requires: as unite(), within 1e9 grids of the origin.
std::size_t count_crossings(const Region& region, std::size_t most, double grid = kClipGrid);

}  // namespace swathe::plane
