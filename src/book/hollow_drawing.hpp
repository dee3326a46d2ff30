#pragma once

#include "draw/flow.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// A stack of noodles sawn across at a filled corner: its square, and in the hollows the strips.
///
/// Requires: the job's corners are filled.
Picture draw_filled_hollows(const Made& made, const Font& labels);

}  // namespace swathe
