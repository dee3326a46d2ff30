#pragma once

#include <cstddef>

#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The machine from above, and round it a band for each circle of the job, the nearest innermost:
/// white where the number can be read, hatched where it looks like another, dark where it cannot be
/// read. Bearings stand round it, counter-clockwise from straight ahead.
///
/// Requires: made.sight; a box at least 80 mm wide and high.
void draw_sight_chart(Drawing& onto, const plane::Box& box, const Made& made, const Font& labels);

/// How wide and high the box must be for the bands' numbers to be as large as a table's.
double sight_chart_side(std::size_t bands);

/// The three kinds of arc beside their words; returns the box taken.
plane::Box draw_arc_key(Drawing& onto, const Font& labels, FlatPoint top_left,
                        const std::string& number);

/// One stretch of a band of a round chart, between two radii and two bearings in radians.
plane::Path band_part(FlatPoint center, double inner, double outer, double from, double to);

}  // namespace swathe
