#pragma once

#include <vector>

#include "swathe/base/outcome.hpp"
#include "swathe/job/job.hpp"
#include "swathe/pattern/pattern.hpp"

namespace swathe {

/// Refuses (TooLarge, at the paper): covers that in tiles would take more than kMostTiles sheets of
/// the job's paper, estimated by area.
Refusals too_many_sheets(const Job& job, const std::vector<Pattern>& patterns);

}  // namespace swathe
