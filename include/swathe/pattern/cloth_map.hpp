#pragma once

#include "swathe/bumper/wrap.hpp"
#include "swathe/job/job.hpp"
#include "swathe/plane/point.hpp"

namespace swathe {

/// From the cover in place to its pattern, and back: how far the cloth is pulled is known here and
/// nowhere else.
///
/// The cover in place is the bumper's own: checks and sight look at it, and numbers are placed on
/// it. The pattern is the same cloth laid flat before it is pulled: it is printed, and the report
/// tells places on it. Both measure from the same two lines, the start's end face and the middle of
/// the front flat, so that a length along either of them is mapped like a place.
/// Holds (cloth_map_test.cpp): (1) to_cover(to_pattern(p)) is p; (2) cloth that is not pulled is
///   its own pattern, to the last bit.
class ClothMap {
 public:
  ClothMap() = default;  ///< of cloth that is not pulled
  explicit ClothMap(const ClothKeys& cloth);

  FlatPoint to_pattern(ClothPoint in_place) const {
    return {along_ * in_place.s, around_ * in_place.u};
  }
  ClothPoint to_cover(FlatPoint on_pattern) const {
    return {on_pattern.x / along_, on_pattern.y / around_};
  }
  bool pulls() const { return along_ != 1.0 || around_ != 1.0; }

 private:
  double along_ = 1.0, around_ = 1.0;  ///< of a length in place, what the pattern has
};

}  // namespace swathe
