#pragma once

#include <string>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The stretch of the pattern between two corners (or ends), on the sheet.
struct Panel {
  std::string side;
  plane::Box box;  ///< between the back edges
};
std::vector<Panel> panels_of(const Made& made, std::size_t bumper, const plane::Placement& place);

/// How the cloth's own coordinates come to lie on a sheet, lower left corner of its box at
/// `corner`: mirrored where the job wants patterns as seen from the cloth's inside.
plane::Placement pattern_placement(const Made& made, std::size_t bumper, FlatPoint corner);

/// "bracket 2, left", by its number in the list of brackets.
std::string bracket_words(const BracketOnPattern& bracket);

/// The same of the window in the cloth that it takes: "window of bracket 2, left".
std::string window_words(const BracketOnPattern& bracket);

/// "INSIDE UP" or "OUTSIDE UP".
std::string face_words(const Made& made);
/// "cut 1 red, 1 blue".
std::string cut_words(const Made& made);
/// "front / left" for the corner nearest to s.
std::string corner_words(const std::vector<PatternCorner>& corners, double s);

/// One bumper's cover at full size with every mark and all words inside its outline, lower left
/// corner of the cloth's box at `corner`.
Drawing draw_pattern(const Made& made, std::size_t bumper, const Font& labels, FlatPoint corner);

/// The half of it that is laid on a fold of the cloth. A numeral is told by its place alone: only
/// one of two layers bears it.
///
/// Requires: the cover is its own mirror image.
Drawing draw_half_pattern(const Made& made, std::size_t bumper, const Font& labels,
                          FlatPoint corner);

}  // namespace swathe
