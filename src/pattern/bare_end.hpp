#pragma once

#include <optional>
#include <vector>

#include "swathe/pattern.hpp"

namespace swathe {

/// The cover's end where padding runs on past its board. Both flaps are slit where the board ends:
/// beside the board they are fastened on its back, past it they lie on the back of the padding,
/// where the tongue holds them.
struct BareEnd {
  bool start = true;
  double board_end = 0;     ///< s of the slits
  double from = 0, to = 0;  ///< s, from the end face to the slits or from them to it
  double fold = 0;          ///< u, above and below, where flaps turn on to the padding's back
  double flap = 0;          ///< u of the flaps' edges there: they never meet
  double slit = 0;          ///< u where the slits end
  bool round = false;       ///< the padding is round as far as `fold`

  /// Past the board, as far as the end face and what lies beyond it.
  bool holds(double s) const { return start ? s < board_end : s > board_end; }
};

/// Nothing where board and padding end together.
std::optional<BareEnd> bare_end(const Wrap& wrap, const ClothKeys& cloth, bool start);
/// The start's, the end's, both or none.
std::vector<BareEnd> bare_ends(const Wrap& wrap, const ClothKeys& cloth);

/// The slits in both flaps, from the cloth's edge inwards.
std::vector<plane::Path> bare_slits(const Wrap& wrap, const ClothKeys& cloth);

/// Where flaps turn on to the padding's back, and where the boards end.
std::vector<NamedLine> bare_lines(const Wrap& wrap, const ClothKeys& cloth);

/// Refuses: DoesNotFit where flaps are too short for the tongue to hold them.
Refusals bare_faults(const Wrap& wrap, const Job& job);

}  // namespace swathe
