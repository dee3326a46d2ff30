#pragma once

#include <string>

#include "swathe/build/made.hpp"
#include "swathe/sheet/drawing.hpp"
#include "swathe/type/face.hpp"

namespace swathe {

/// How the cloth's own coordinates come to lie on a sheet, lower left corner of its box at
/// `corner`: mirrored where the job wants patterns as seen from the cloth's inside.
Placement pattern_placement(const Made& made, std::size_t bumper, FlatPoint corner);

/// "INSIDE UP" or "OUTSIDE UP".
std::string face_words(const Made& made);
/// "cut 1 red, 1 blue".
std::string cut_words(const Made& made);
/// "front / left" for the corner nearest to s.
std::string corner_words(const Pattern& pattern, double s);

/// One bumper's cover at full size with every mark and all words inside its outline, lower left
/// corner of the cloth's box at `corner`.
Drawing draw_pattern(const Made& made, std::size_t bumper, const Face& labels, FlatPoint corner);

}  // namespace swathe
