#pragma once

#include <limits>
#include <optional>
#include <vector>

#include "swathe/plane/point.hpp"

// Upright boxes laid on a strip, none turned.
namespace swathe {

struct StripBox {
  double along = 0, across = 0;
};

struct StripLay {
  std::vector<FlatPoint> at;  ///< lower left corner of each box, in the order given; x along
  double length = 0;          ///< of strip taken
};

/// A short lay: every box in turn goes where it ends earliest, for several orders of the boxes, and
/// for every order where they are few.
///
/// Requires: sizes positive, none wider than the strip.
/// Holds: no two boxes overlap, none leaves the strip; a few boxes (kAllOrders) lie at least as
/// well as by any order on shelves. Source: bottom-left placement; Baker, Coffman and Rivest, SIAM
/// J. Comput. 9 (1980), from memory. With a `piece_length`, the strip is cut at its multiples and
/// no box crosses a cut; requires every box to be at most so long.
StripLay lay_on_strip(const std::vector<StripBox>& boxes, double strip_width,
                      double piece_length = std::numeric_limits<double>::infinity());

inline constexpr std::size_t kAllOrders = 7;

}  // namespace swathe
