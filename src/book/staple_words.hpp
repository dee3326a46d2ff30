#pragma once

#include <string>

#include "swathe/make.hpp"

// Which staples are driven when, by their numbers.
namespace swathe {

/// How many corners, at most, a bumper is folded at one after another, from its first staple on.
int corners_on_the_way(const Made& made);

/// The numbers of the staples on this part: "1 to 40", or where bumpers differ "A 1 to 40, B 1 to
/// 38"; of flaps those behind so many corners. Empty where there are none.
std::string staples_of(const Made& made, Staple::On on, int corners = 0);
/// Of all staples on flaps.
std::string flap_staples(const Made& made);

}  // namespace swathe
