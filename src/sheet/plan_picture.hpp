#pragma once

#include "draw/flow.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// The frame from above with its bumpers on: boards, padding, brackets and gaps, sides and bumpers
/// named, measured in the job's units; the machine's front at the top.
Picture plan_picture(const Made& made, const Font& labels, double width_mm, double most_height_mm);

}  // namespace swathe
