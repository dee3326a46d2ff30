#pragma once

#include <cstdint>
#include <vector>

#include "swathe/plane.hpp"

namespace swathe {

/// A thousandth of a millimeter. Lays on a roll are computed in integers, so that touching is
/// exact.
using Micron = std::int64_t;
inline constexpr Micron kMicronsPerMm = 1000;
Micron microns(double mm);

/// A stretch of a piece with straight sides.
struct Step {
  Micron from_y = 0, to_y = 0;  ///< across the roll
  Micron from_x = 0, to_x = 0;  ///< along it

  friend bool operator==(const Step&, const Step&) = default;
};

/// A piece of cloth as a stack of steps, the lower left corner of its box at 0, 0.
///
/// Holds: (1) any line along or across the roll meets it in one stretch; (2) the piece lies inside,
///   but for the rounding to microns.
struct SteppedShape {
  std::vector<Step> steps;  ///< from y = 0 upwards, without gaps
  Micron along = 0, across = 0;

  friend bool operator==(const SteppedShape&, const SteppedShape&) = default;
};

/// The steps round an outline. Hollows in it are filled. A slanted or curved edge becomes steps of
/// at most kStepMost; where that takes more than kMostSteps, those that give away the least cloth
/// are joined. An outline of upright and level edges is kept as it is, but for its hollows.
///
/// Requires: an outline with some width and height.
SteppedShape stepped(const plane::Polygon& outline);

inline constexpr double kStepMost = 5000.0;  ///< microns
inline constexpr std::size_t kMostSteps = 12;

}  // namespace swathe
