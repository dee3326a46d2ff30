#pragma once

#include "swathe/build/made.hpp"
#include "swathe/sheet/drawing.hpp"
#include "swathe/type/face.hpp"

namespace swathe {

/// What to buy, what to cut and in which order to work, on the job's paper: boards with their
/// pencil marks, padding with the fill of its corners, cloth, numerals, brackets, staples, tools.
/// Counts for one set and for all colours.
Sheet list_sheet(const Made& made, const Face& labels);

}  // namespace swathe
