#pragma once

#include <string>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/draw.hpp"
#include "swathe/plane.hpp"
#include "swathe/type.hpp"

// Digits shaded by how wide their stroke is in each place, to be read in gray.
namespace swathe {

/// A digit with its stroke, in its own millimeters.
struct ShadedDigit {
  const plane::Region& outline;
  const type::Stroke& stroke;
};

/// Draws a digit at `scale`, its origin at `at`: the narrower, the darker, in four steps about
/// `asked`; what does not count as stroke stays white. A ring marks the narrowest place.
void draw_shaded(Drawing& onto, const ShadedDigit& digit, double asked, FlatPoint at, double scale);

/// The steps' key from an upper left corner; the box it took.
plane::Box draw_shade_key(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                          double asked, Units units);

}  // namespace swathe
