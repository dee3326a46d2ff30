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

/// Measures the strokes of an outline in mm: the medial axis of its edges, pruned where the two
/// nearest edge points do not lie on opposite sides, so that neither corners, stroke ends nor the
/// inscribed circles of joins count as stroke. Requires: outer outlines counter-clockwise, holes
/// clockwise, no crossings.
Stroke measure_stroke(const Region& outline);

}  // namespace swathe
