#pragma once

#include "draw/flow.hpp"
#include "swathe/bumper.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// How a piece's length is told: sawn() of a board, dimension() of padding.
using SizeWords = std::string (*)(Length, Units);

/// Boards or padding of one set, a row each: length, ends, how many; and how far padding runs past
/// its own board, where any does.
Table piece_table(const Made& made, const std::vector<bumper::Piece>& pieces, SizeWords size,
                  const std::vector<Overhang>& past = {});

}  // namespace swathe
