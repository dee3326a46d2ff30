#pragma once

#include <vector>

#include "place/place.hpp"
#include "sight/demand.hpp"
#include "swathe/job.hpp"

namespace swathe {

/// A number as it would stand in the middle of a room, or at another place along it.
SightNumber number_in(const SetNumber& number, const NumeralRoom& room, double center_s);

/// The fewest rooms, at least `least`, from which the number can be read as the season asks; if no
/// choice is enough, the fewest that show about as much as all of them. Of equally many, those with
/// the largest angles between them, then those read from most viewpoints, then the longest. If the
/// season asks for no viewpoints: as many as it asks for, else up to four.
std::vector<NumeralRoom> choose_by_sight(const std::vector<NumeralRoom>& fitting,
                                         const SetNumber& number, int least,
                                         const std::vector<Wrap>& wraps, const SightKeys& keys,
                                         const Demand& demand);

}  // namespace swathe
