#pragma once

#include "swathe/make.hpp"

namespace swathe {

/// Along a strip of hook-and-loop, mm.
double length_of_strip(const plane::Path& strip);

/// Of all strips of one set of covers, mm.
double strip_length(const Made& made);

}  // namespace swathe
