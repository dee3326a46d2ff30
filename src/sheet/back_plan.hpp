#pragma once

#include <string>
#include <vector>

#include "draw/flow.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// A staple on a board's inside face: x along the frame's side, z up from the board's underside.
struct StapleOnBoard {
  double x = 0, z = 0;
  bool upright = false;
  int order = 0;
};

/// A bracket on one: x along the side, y up.
struct BracketOnBoard {
  int number = 0;       ///< in the list of brackets, from 1
  std::size_t leg = 0;  ///< of the bumper's run
  plane::Box box;
};
std::vector<BracketOnBoard> brackets_on(const Made& made, std::size_t bumper);

/// The back of one side of a bumper.
struct BoardBack {
  std::string side;
  std::size_t leg = 0;          ///< of the bumper's run
  double from_x = 0, to_x = 0;  ///< the inside face, along the frame's side
  std::vector<StapleOnBoard> staples;
  std::vector<plane::Box> strips;  ///< hook-and-loop: x along the side, y up
  std::vector<BracketOnBoard> brackets;
};

/// The backs of a bumper's sides, from the start.
///
/// Holds (back_plan_test.cpp): (1) every staple of the pattern but those in its ears is on one of
///   them, where Wrap says that it lies; (2) none lies on a bracket.
std::vector<BoardBack> backs_of(const Made& made, std::size_t bumper);

/// The backs as one sees them from inside the machine, side by side and then in rows: staples with
/// their order, strips, brackets.
Picture draw_backs(const Made& made, std::size_t bumper, const Font& labels, double width_mm);

}  // namespace swathe
