#pragma once

#include "swathe/base/length.hpp"

// How large a digit looks, and how far from square on it can still be read.
namespace swathe {

/// Beyond this no legibility is claimed: the law of oblique_factor() was found to hold up to 65.7
/// deg and to fail from there on. Source: Cai and Green, Estimating the legibility of a single
/// letter E viewed at different display angles, Applied Ergonomics 2013.
inline constexpr Angle kWidestObliquity = degrees(65);

/// The angle a thing takes up square to the line of sight.
/// Source: h = 2 d tan(x / 2), Federal Aviation Administration, Human Factors Design Standard.
Angle visual_angle(Length size, Length distance);

/// How far away a thing still takes up that angle.
Length distance_of(Length size, Angle angle);

/// What of its size a character keeps to the reader, seen this far from square on: equal solid
/// angles are equally legible, so it is the square root of the cosine. 0 from 90 deg on.
/// Source: Cai and Green, LEUKOS 5 (2009), pp. 279-295.
double oblique_factor(Angle off_square);

}  // namespace swathe
