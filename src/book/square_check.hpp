#pragma once

#include <string>
#include <vector>

#include "swathe/make.hpp"

namespace swathe {

/// A length across a bumper's joined boards, on their inside, from a corner or an end to the next
/// but one: with all of them right, its corners have the angles of the frame's.
struct AcrossBoards {
  std::string from, to;  ///< "end on front", "corner left / back"
  double length_mm = 0;
};

/// Both diagonals of a bumper with two corners, the distance of the ends of one with one; none of a
/// bumper that turns no corner.
///
/// Source: two sides of a triangle and the angle between them give the third (Euclid, Elements,
/// I.4).
std::vector<AcrossBoards> across_boards(const Made& made, std::size_t bumper);

}  // namespace swathe
