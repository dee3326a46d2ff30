#include "draw/text_box.hpp"

#include <algorithm>
#include <cmath>

namespace swathe {
namespace {

// Of the capitals' height; common for text fonts, and ample for the one the sheets are set in.
constexpr double kDescent = 0.30;
constexpr double kAscent = 1.08;

/// Half the box's reach along a direction.
double reach(const TextBox& box, FlatPoint direction) {
  return box.half_length * std::abs(dot(box.along, direction)) +
         box.half_height * std::abs(dot(left_of(box.along), direction));
}

}  // namespace

plane::Polygon TextBox::corners() const {
  const FlatPoint x = half_length * along, y = half_height * left_of(along);
  return {middle - x - y, middle + x - y, middle + x + y, middle - x + y};
}

TextBox box_of(const TextMark& text, const Font& labels) {
  TextBox box;
  box.along = plane::direction(text.turn);
  box.half_length = 0.5 * labels.text_width_mm(text.text, text.height_mm);
  box.half_height = 0.5 * (kAscent + kDescent) * text.height_mm;
  const double ahead = text.anchor == draw::Anchor::Left    ? box.half_length
                       : text.anchor == draw::Anchor::Right ? -box.half_length
                                                            : 0.0;
  const double up = 0.5 * (kAscent - kDescent) * text.height_mm;
  box.middle = text.at + ahead * box.along + up * left_of(box.along);
  return box;
}

TextBox box_of(const plane::Box& box) {
  return {box.middle(), {1, 0}, 0.5 * box.width(), 0.5 * box.height()};
}

plane::Box bounds(const TextBox& box) {
  const FlatPoint half{reach(box, {1, 0}), reach(box, {0, 1})};
  return {box.middle - half, box.middle + half};
}

bool overlap(const TextBox& a, const TextBox& b) {
  // Two rectangles are apart when they are along a side's direction of either.
  for (const FlatPoint axis : {a.along, left_of(a.along), b.along, left_of(b.along)})
    if (std::abs(dot(b.middle - a.middle, axis)) >= reach(a, axis) + reach(b, axis)) return false;
  return true;
}

bool crossed_by(const TextBox& box, FlatPoint a, FlatPoint b) {
  double enters = 0, leaves = 1;
  const auto slab = [&](FlatPoint axis, double half) {
    const double from = dot(a - box.middle, axis), step = dot(b - a, axis);
    if (std::abs(step) < 1e-12) return std::abs(from) < half;
    const double one = (-half - from) / step, other = (half - from) / step;
    enters = std::max(enters, std::min(one, other));
    leaves = std::min(leaves, std::max(one, other));
    return enters < leaves;
  };
  return slab(box.along, box.half_length) && slab(left_of(box.along), box.half_height);
}

}  // namespace swathe
