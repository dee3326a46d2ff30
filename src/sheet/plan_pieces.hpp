#pragma once

#include "swathe/make.hpp"
#include "swathe/plane.hpp"

// Boards and padding from above, in the frame's own coordinates.
namespace swathe {

/// A board's outline, ends as they are cut.
plane::Path board_in_plan(const Made& made, const bumper::Piece& board);

/// The outline of a piece of padding; one that bends goes round its bumper's corners.
plane::Path padding_in_plan(const Made& made, const bumper::Piece& padding);

/// How far out the bumpers reach: the box round all padding.
plane::Box reach_in_plan(const Made& made);

}  // namespace swathe
