#pragma once

#include <string>
#include <vector>

#include "sight/demand.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"

namespace swathe {

/// If the numbers cannot be read as the season asks, or look like another number from somewhere:
/// the smallest change that corrects it, in words. It tries to move a number along its side, one
/// more side, higher digits, several more sides, in this order, and sweeps again for each. Empty if
/// nothing is missing.
///
/// Holds (sight_advice_test.cpp): what it says, done, meets the season.
std::string sight_advice(const std::vector<Wrap>& wraps, const std::vector<SightNumber>& numbers,
                         const SightKeys& keys, const Demand& demand, Units units);

}  // namespace swathe
