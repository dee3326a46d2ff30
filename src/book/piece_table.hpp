#pragma once

#include "draw/flow.hpp"
#include "swathe/bumper.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// Boards or padding of one set, a row each: length, ends, how many; and how far padding runs past
/// its own board, where any does.
Table piece_table(const Made& made, const std::vector<Piece>& pieces,
                  const std::vector<Overhang>& past = {});

}  // namespace swathe
