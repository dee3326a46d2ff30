#pragma once

#include <vector>

#include "swathe/plane/path.hpp"

namespace swathe {

/// A short piece of a stroke's middle line: where, how long, and how wide the stroke is there; mm.
struct StrokePiece {
  FlatPoint at;
  double length = 0;
  double width = 0;
};

/// The strokes of one digit, measured on the medial axis of its outline.
class Stroke {
 public:
  explicit Stroke(std::vector<StrokePiece> pieces);

  double length() const { return length_; }  ///< of the pruned axis
  double median() const;                     ///< width, weighted by length
  double least() const;
  FlatPoint least_at() const;
  /// Share of the length on which the stroke is at least `width` wide, 0 to 1.
  double share_at_least(double width) const;
  const std::vector<StrokePiece>& pieces() const { return pieces_; }  ///< by width, narrow first

 private:
  std::vector<StrokePiece> pieces_;
  double length_ = 0;
};

/// Which circles of the medial axis count as stroke: those that touch the outline on nearly
/// opposite sides. In a corner, at a stroke's end and where strokes join they do not. The measure
/// is the chord between the two touching places over the diameter.
inline constexpr double kStrokeOpposed = 0.95;
/// The same at a free end of the line, from which bits are taken off until one passes: what tapers
/// by more than 0.45 of its own length is a tip, not a stroke (2 sqrt(1 - 0.9743^2) = 0.45).
inline constexpr double kStrokeEndOpposed = 0.9743;
/// A line shorter than this share of the outline's greater side is no stroke: 1 mm of a 4 in digit.
/// Even the pinch between a bowl and its stem has a longer one.
inline constexpr double kStrokeLeastLine = 0.01;
/// The line is looked at in bits of at most this share of the greater side.
inline constexpr double kStrokeStep = 0.0025;

/// Measures the strokes of an outline in mm, on its medial axis less what does not count as stroke.
/// The width is the diameter of the circle about each place of the line.
///
/// Requires: outer outlines counter-clockwise, holes clockwise; overlaps are united.
/// Holds: (1) bars and rings, turned or not, have the width they were drawn with;
///        (2) the circle that fits into a join does not count;
///        (3) the answer is the same for the outline turned, mirrored and moved.
Stroke measure_stroke(const Region& outline);

}  // namespace swathe
