#pragma once

#include <vector>

#include "swathe/job/job.hpp"
#include "swathe/place/place.hpp"
#include "swathe/sight/demand.hpp"

namespace swathe {

/// A number as it would stand in the middle of a room, or at another place along it.
SightNumber number_in(const SetNumber& number, const NumeralRoom& room, double center_s);

/// The fewest rooms, `least` or more, that let an observer read what the season asks; where no
/// choice does, the fewest that read about as much as all of them. Among as many, those farthest
/// apart in bearing, then those that read from the most viewpoints, then those with the most room.
/// Where the season asks for no viewpoints, so many as it counts, else up to four.
std::vector<NumeralRoom> choose_by_sight(const std::vector<NumeralRoom>& fitting,
                                         const SetNumber& number, int least,
                                         const std::vector<Wrap>& wraps, const SightKeys& keys,
                                         const Demand& demand);

}  // namespace swathe
