#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base/length.hpp"
#include "swathe/base/outcome.hpp"
#include "swathe/bumper/corner.hpp"
#include "swathe/job/job.hpp"
#include "swathe/plane/point.hpp"

namespace swathe {

/// One straight side of the frame, from above; seen from outside it runs from left to right.
struct FrameSide {
  std::string name;
  FlatPoint from, to;
  FlatPoint along;    ///< unit, counter-clockwise round the frame
  FlatPoint outward;  ///< unit
  double length_mm = 0;

  /// The place `x` along it and `depth` outward.
  FlatPoint at(double x, double depth) const { return from + x * along + depth * outward; }
};

/// The frame's outline in plan, grown by the fit: all that is built hangs on this line.
class Frame {
 public:
  /// Refuses: DoesNotFit (corners cross, clockwise, an edge of no length), each at its key.
  static Outcome<Frame> make(const FrameKeys& keys, const Places& places);

  const std::vector<FrameSide>& sides() const { return sides_; }
  /// Number of the side of that name.
  std::optional<int> side(std::string_view name) const;
  int next(int side) const { return (side + 1) % static_cast<int>(sides_.size()); }
  int previous(int side) const {
    return (side + static_cast<int>(sides_.size()) - 1) % static_cast<int>(sides_.size());
  }
  /// How far the outline turns at the end of a side; negative at an inside corner.
  Angle turn_after(int side) const;
  /// The corner there, where every line bends at a point.
  Corner corner_after(int side) const;
  Length fit() const { return fit_; }
  Length floor_gap() const { return floor_gap_; }
  /// Middle of the box round the frame: the machine's center for an observer.
  FlatPoint center() const;

 private:
  std::vector<FrameSide> sides_;
  Length fit_, floor_gap_;
};

}  // namespace swathe
