#pragma once

#include <vector>

#include "swathe/base.hpp"
#include "swathe/job.hpp"
#include "swathe/pattern.hpp"

namespace swathe {

/// Refuses (TooLarge, at the paper): covers that in tiles would take more than kMostTiles sheets of
/// the job's paper, estimated by area.
Refusals too_many_sheets(const Job& job, const std::vector<Pattern>& patterns);

}  // namespace swathe
