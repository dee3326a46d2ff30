#pragma once

#include <cstddef>
#include <limits>
#include <vector>

#include "stock/stepped.hpp"

// Pieces laid on a strip, so that it is short.
namespace swathe {

/// A piece in every way it may be turned; the first is taken where it makes no difference.
struct StripPiece {
  std::vector<SteppedShape> ways;
};

struct Strip {
  Micron width = 0;
  Micron length = std::numeric_limits<Micron>::max() / 8;  ///< of one strip; more follow it
};

struct StripPlace {
  std::size_t way = 0;
  Micron x = 0, y = 0;  ///< lower left corner of the piece's box; x along the strips
};

struct StripLay {
  std::vector<StripPlace> at;  ///< of each piece, in the order given
  Micron length = 0;           ///< of strip taken, from the first one's start
  bool shortest = false;       ///< proved: no lay of these steps is shorter
};

/// A short lay.
///
/// Requires: at least one way each; every way fits on one strip.
/// Holds: (1) no two pieces overlap, none leaves the strip or lies across two strips; (2) the
///   shortest there is for up to four boxes, and wherever the search ends within its budget;
///   (3) never longer than next-fit, first-fit and best-fit shelves of the boxes, longest first,
///   in the first way; hundreds of pieces lie on the best of these.
/// Source: places by no-fit polygons, from the bottom left; then branch and bound over the parts
///   of the room that a no-fit polygon leaves clear, as M. Fischetti and I. Luzzi, Mixed-integer
///   programming models for nesting problems, J. of Heuristics 15 (2009); from memory. The shelves:
///   Coffman, Garey, Johnson and Tarjan, SIAM J. Comput. 9 (1980); from memory.
StripLay lay_on_strip(const std::vector<StripPiece>& pieces, const Strip& strip);

}  // namespace swathe
