#pragma once

#include <vector>

#include "swathe/numeral.hpp"
#include "swathe/plane.hpp"

namespace swathe {

/// The pieces a sheet falls into when a digit is cut out of it: 0 is the sheet outside, 1 and up
/// are the islands.
struct SheetPieces {
  std::vector<int> of_contour;  ///< the piece that lies along each contour of the region
  std::vector<int> island;      ///< contour that bounds piece i + 1

  int islands() const { return static_cast<int>(island.size()); }
};

SheetPieces sheet_pieces(const plane::Region& outline);

/// A bar that could be left standing, and the two pieces it ties together.
struct BridgeCandidate {
  Bridge bridge;
  int a = 0, b = 0;
  double cost = 0;  ///< mm of stroke taken, dearer where the bar is not upright
};

/// Every bar worth looking at, cheapest first: along twelve directions, at places spread evenly
/// over each island.
std::vector<BridgeCandidate> bridge_candidates(const plane::Region& outline,
                                               const SheetPieces& pieces, double width);

/// Whether two bars stand at least `gap` apart.
bool stand_apart(const Bridge& a, const Bridge& b, double gap);

}  // namespace swathe
