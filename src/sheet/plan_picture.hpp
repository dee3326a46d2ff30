#pragma once

#include "draw/flow.hpp"
#include "swathe/make.hpp"

namespace swathe {

enum class PlanDetail {
  Measured,  ///< to build by
  Named,     ///< to find one's way: no more than names and the lengths of the frame's sides
};

/// The frame from above with its bumpers on: boards, padding, brackets and gaps, sides and bumpers
/// named, measured in the job's units; the machine's front at the top.
Picture plan_picture(const Made& made, const Font& labels, double width_mm, double most_height_mm,
                     PlanDetail detail = PlanDetail::Measured);

}  // namespace swathe
