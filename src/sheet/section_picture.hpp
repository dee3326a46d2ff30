#pragma once

#include "draw/flow.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// A cut square through a bumper: board, padding, cloth with its flaps, the floor; heights from the
/// floor and depths from the board's back, each from its one datum.
Picture section_picture(const Made& made, const Font& labels, double width_mm,
                        double most_height_mm);

}  // namespace swathe
