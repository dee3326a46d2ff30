#pragma once

#include <cstddef>

#include "swathe/draw/drawing.hpp"
#include "swathe/make/made.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// Full-size templates of what a tape measure draws badly: the corner reliefs with their folds, the
/// ends and the windows, several on a page of the job's paper where they fit. Parts that are the
/// same, turned or not, are drawn once and say where they belong. One larger than the paper is
/// tiled.
///
/// Requires: a bumper of the job, by its number.
Sheet template_sheets(const Made& made, std::size_t bumper, const Font& labels);

}  // namespace swathe
