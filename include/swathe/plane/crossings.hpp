#pragma once

#include <cstddef>

#include "swathe/plane/clip.hpp"
#include "swathe/plane/path.hpp"

namespace swathe {

/// How many pairs of the outlines' edges cross, touch or lie on each other, neighbors' common
/// corner left out; all rounded to the grid first, as unite() does. Counting ends once there are
/// more than `most`: the answer is then most + 1. What unite() takes grows with their number.
///
/// Requires: as unite(), within 1e9 grids of the origin.
std::size_t count_crossings(const Region& region, std::size_t most, double grid = kClipGrid);

}  // namespace swathe
