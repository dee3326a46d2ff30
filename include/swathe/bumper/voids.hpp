#pragma once

#include <string>
#include <vector>

#include "swathe/bumper/pieces.hpp"

namespace swathe {

/// Room at a corner that the padding's pieces leave open, to be filled with padding of the same
/// kind.
struct CornerVoid {
  std::string bumper;
  std::string side_before, side_after;
  int strips = 0;           ///< grooves to fill, each as long as `length`
  double length = 0;        ///< mm
  double section_area = 0;  ///< of one groove, mm2
};

/// Grooves between round noodles and their square box where butted padding meets: on the lapping
/// noodles, as far as they go past the board line of the butting side. Blocks and mitred or bent
/// noodles leave none.
std::vector<CornerVoid> corner_voids(const Frame& frame, const Section& section, const Run& run,
                                     const PaddingKeys& padding);

/// Padding that stands out past the end of its own board, which nothing carries there.
struct Overhang {
  std::string bumper, side;
  double at_start = 0,
         at_end =
             0;  ///< mm, left and right seen from outside; zero where the board reaches further
};
std::vector<Overhang> overhangs(const std::vector<Piece>& boards,
                                const std::vector<Piece>& padding);

}  // namespace swathe
