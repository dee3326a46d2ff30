#pragma once

#include <string>
#include <vector>

#include "place/advice.hpp"
#include "sight/demand.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"

namespace swathe {

/// If the numbers cannot be read as the season asks, or look like another number from somewhere:
/// the smallest change that corrects it. It tries to move a number along its side, one more side,
/// higher digits, several more sides, and two of these together, in this order, and sweeps again
/// for each. Empty if nothing is missing.
///
/// `places` has the place of each number as PlacedNumeral has it.
/// Holds (tests/make/sight_test.cpp): what it says, done, meets the season, in words as by keys.
Advice sight_advice(const std::vector<Wrap>& wraps, const std::vector<SightNumber>& numbers,
                    const std::vector<int>& places, const Job& job, const Demand& demand);

}  // namespace swathe
