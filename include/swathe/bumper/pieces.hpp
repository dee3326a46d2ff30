#pragma once

#include <string>
#include <vector>

#include "swathe/bumper/run.hpp"

namespace swathe {

/// How one end of a board or of padding is cut.
struct EndCut {
  enum class Kind { Free, Laps, Butts, Mitred, Bent };
  Kind kind = Kind::Free;
  double angle_deg = 0;  ///< off square; 0 for a square cut
  double inner_short = 0,
         outer_short = 0;  ///< where its edges end before the longest, mm; the inner is the board's
};

/// A board, or one noodle or block of padding, of one side of one bumper.
struct Piece {
  std::string bumper;
  std::string side;
  double length_mm = 0;         ///< the longest edge, as cut
  double from_x = 0, to_x = 0;  ///< along the frame side
  EndCut start, end;            ///< left and right, seen from outside
  int count = 1;                ///< noodles of a stack are cut alike
};

/// Refuses: DoesNotFit where at a corner both sides lap, or neither (at boards.lapping), or where
/// lapped ends would be cut more than 60 deg off square (at boards.joint).
Outcome<std::vector<Piece>> board_pieces(const Frame& frame, const Section& section, const Run& run,
                                         const BoardKeys& boards, const Places& places);
/// The same for padding (at padding.lapping, padding.corner). Bent padding is one piece for the
/// whole run, measured along its middle; its side is named "front + left".
Outcome<std::vector<Piece>> padding_pieces(const Frame& frame, const Section& section,
                                           const Run& run, const PaddingKeys& padding,
                                           const Places& places);

}  // namespace swathe
