#pragma once

#include <cstddef>
#include <optional>
#include <utility>

#include "tile/tiling.hpp"

namespace swathe {

/// Places a block in whichever of several ways finds room on the tile with the lowest number.
/// draw(onto, way) draws it and returns its box. False where no tile has room.
template <class Ways, class Draw>
bool place_on_first(Tiling& tiling, const Ways& ways, Draw draw) {
  std::optional<std::size_t> first;
  Drawing best;
  FlatPoint best_size;
  for (const auto way : ways) {
    Drawing drawn, block;
    const plane::Box box = draw(drawn, way);
    if (box.height() <= 0) return false;
    block.add(drawn, {false, 0, FlatPoint{} - box.lo});
    const FlatPoint size{box.width(), box.height()};
    const auto tile = tiling.room_for(size);
    if (!tile || (first && *tile >= *first)) continue;
    first = tile;
    best = std::move(block);
    best_size = size;
  }
  return first && tiling.place(best, best_size);
}

}  // namespace swathe
