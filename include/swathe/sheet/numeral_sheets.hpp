#pragma once

#include "swathe/draw/drawing.hpp"
#include "swathe/make/made.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// Every digit of the number at full size, to be cut by the job's method: stencils and masks with
/// their bridges, films mirrored, cloth with its seam; how often each is needed; as many on a page
/// of the job's paper as fit. A digit larger than the paper is tiled.
///
/// Requires: the job has numerals.
Sheet numeral_sheets(const Made& made, const Font& labels);

}  // namespace swathe
