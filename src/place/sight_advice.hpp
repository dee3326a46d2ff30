#pragma once

#include <string>
#include <vector>

#include "swathe/base/units.hpp"
#include "swathe/job/job.hpp"
#include "swathe/sight/demand.hpp"

namespace swathe {

/// Where the numbers do not read as the season asks, or read as another number from somewhere: the
/// smallest change that would mend it, in words. A number moved along its side, one more side,
/// higher digits, several sides more, in that order; each tried by sweeping again. Empty where
/// nothing is wanting.
///
/// Holds (sight_advice_test.cpp): what it says, done, meets the season.
std::string sight_advice(const std::vector<Wrap>& wraps, const std::vector<SightNumber>& numbers,
                         const SightKeys& keys, const Demand& demand, Units units);

}  // namespace swathe
