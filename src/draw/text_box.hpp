#pragma once

#include "swathe/draw.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The room a text takes on the sheet, descenders in: a rectangle that may be turned.
struct TextBox {
  FlatPoint middle;
  FlatPoint along{1, 0};  ///< unit, the way the text reads
  double half_length = 0, half_height = 0;

  TextBox grown(double by) const { return {middle, along, half_length + by, half_height + by}; }
  plane::Polygon corners() const;  ///< counter-clockwise from the lower left
};

TextBox box_of(const TextMark& text, const Font& labels);
TextBox box_of(const plane::Box& box);
/// The upright box round it.
plane::Box bounds(const TextBox& box);

bool overlap(const TextBox& a, const TextBox& b);
/// Whether any of the straight stretch from `a` to `b` lies in the box.
bool crossed_by(const TextBox& box, FlatPoint a, FlatPoint b);

}  // namespace swathe
