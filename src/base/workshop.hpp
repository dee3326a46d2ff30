#pragma once

#include <string>

#include "swathe/base.hpp"

// Sizes as a workshop works to them; cloth and foam go by dimension(), to the nearest 1/16 in.
namespace swathe {

/// The next 1/16 in or mm up or down: a value to type, that a tape measure shows.
enum class Rounding { Up, Down };
Length on_tape(Length length, Units units, Rounding rounding);

/// Of a board: the next 1/16 in or mm down, so that it fits what it goes into.
std::string sawn(Length length, Units units);
std::string sawn_with_unit(Length length, Units units);

/// Of a hole or of a bracket's place: to the nearest 1/32 in or half mm.
std::string marked(Length length, Units units);

}  // namespace swathe
