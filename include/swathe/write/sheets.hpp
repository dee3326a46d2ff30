#pragma once

#include <vector>

#include "swathe/draw/drawing.hpp"
#include "swathe/make/made.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// Every sheet of a job that is cut, marked or read at the bench, in the order of work: per bumper
/// its pattern at full size, the same in tiles, its half on the fold, the tape-measure layout and
/// its templates; then the numerals, what an observer sees, then the build book. Sheets that would
/// have no page are left out, and tiles, half and templates of a cover that is cut from another's
/// print.
std::vector<Sheet> all_sheets(const Made& made, const Font& labels);

}  // namespace swathe
