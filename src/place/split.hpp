#pragma once

#include <optional>
#include <vector>

#include "numeral/size.hpp"
#include "place/place.hpp"
#include "swathe/base.hpp"
#include "swathe/bumper.hpp"

namespace swathe {

/// The stretches either side of the gap between two bumpers, or the two ends of one, on a side that
/// both reach; left and right as seen from outside.
struct SplitRoom {
  NumeralRoom left, right;
  double between = 0;  ///< from the left one's end to the right one's start, along the side
};

/// In order of the sides' first rooms, and along each side.
std::vector<SplitRoom> split_rooms(const std::vector<Wrap>& wraps,
                                   const std::vector<NumeralRoom>& rooms);

/// Digits `from` up to `to` of a number, as a number of their own, where they stood in it.
SetNumber part_of(const SetNumber& number, std::size_t from, std::size_t to);

/// A number in two parts.
struct Split {
  SetNumber left, right;
  double left_center_s = 0, right_center_s = 0;  ///< of their ink
  double space = 0;                              ///< ink to ink, over the gap
};

/// The number split after `digits` of them: both parts as near the gap as `margin` lets them stand,
/// and no nearer to each other than they do in the whole number.
/// Requires: 0 < digits < as many as the number has.
Split split_at(const SetNumber& number, const SplitRoom& room, std::size_t digits, double margin);
bool fits(const Split& split, const SplitRoom& room, double margin);

/// The split that fits, its parts as alike in width as may be and its space at most `most_space`;
/// nothing where none does.
std::optional<Split> split_number(const SetNumber& number, const SplitRoom& room, double margin,
                                  std::optional<Length> most_space);

}  // namespace swathe
