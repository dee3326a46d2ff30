#pragma once

#include <string>
#include <vector>

#include "swathe/pattern.hpp"

namespace swathe {

/// A stretch of the cover on which no seam may lie, mm along it.
struct Occupied {
  double from = 0, to = 0;
};

/// Seams that put a cover together from pieces no longer than the cloth at hand; none where the
/// cloth is long enough.
///
/// From the start on, each seam lies under the last pleat the piece reaches, or else as far along
/// as it reaches clear of corners, windows, ends and whatever is `occupied` (numerals). Refuses:
/// DoesNotFit at "cloth.longest_piece" where the cover is too long and no seam is allowed, or no
///   place for one is left.
/// Holds: (1) no piece, allowances in, is longer than the cloth; (2) no seam crosses what is
/// occupied.
Outcome<std::vector<ClothJoin>> lay_joins(const Pattern& pattern, const Job& job,
                                          std::vector<Occupied> occupied);

/// A piece of cloth that a cover is sewn from, allowances in.
struct ClothPart {
  std::string name;  ///< the bumper's where the cover is one piece, else "A1", "A2" from the start
  plane::Box box;    ///< on the pattern
  plane::Polygon outline;  ///< its cut edge, on the pattern
};
std::vector<ClothPart> cloth_parts(const Pattern& pattern, const std::vector<ClothJoin>& joins);

}  // namespace swathe
