#pragma once

#include "swathe/bumper/section.hpp"

namespace swathe {

/// E: how far the front line runs past the frame's corner, on each side of it; mm. `turn` in
/// radians. Source: mitred and butted padding meet in the bisecting plane; bent padding turns about
/// the boards' outer corner.
double past_corner(const Section& section, PaddingCorner kind, double turn);

}  // namespace swathe
