#include "place/split.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <string>

namespace swathe {
namespace {

constexpr double kTouch = 1e-6;  // mm: what rounding may take from a stretch

/// A room with where it begins and ends along its side of the frame, from the side's left end.
struct OnSide {
  NumeralRoom room;
  double from_x = 0, to_x = 0;
};

OnSide on_side(const Wrap& wrap, const NumeralRoom& room) {
  const int on = wrap.side_of(0.5 * (room.from_s + room.to_s));
  const double s_minus_x = wrap.run().sides[static_cast<std::size_t>(on)].s_minus_x;
  return {room, room.from_s - s_minus_x, room.to_s - s_minus_x};
}

}  // namespace

std::vector<SplitRoom> split_rooms(const std::vector<Wrap>& wraps,
                                   const std::vector<NumeralRoom>& rooms) {
  std::vector<std::string> sides;
  for (const NumeralRoom& room : rooms) {
    if (std::ranges::find(sides, room.side) == sides.end()) sides.push_back(room.side);
  }
  std::vector<SplitRoom> found;
  for (const std::string& side : sides) {
    std::vector<OnSide> along;
    for (const NumeralRoom& room : rooms) {
      if (room.side != side) continue;
      along.push_back(on_side(wraps[static_cast<std::size_t>(room.bumper)], room));
    }
    std::ranges::stable_sort(along, {}, &OnSide::from_x);
    for (std::size_t i = 1; i < along.size(); ++i) {
      found.push_back({along[i - 1].room, along[i].room, along[i].from_x - along[i - 1].to_x});
    }
  }
  return found;
}

SetNumber part_of(const SetNumber& number, std::size_t from, std::size_t to) {
  SetNumber part = number;
  part.text = number.text.substr(from, to - from);
  part.digits.assign(number.digits.begin() + static_cast<std::ptrdiff_t>(from),
                     number.digits.begin() + static_cast<std::ptrdiff_t>(to));
  measure_line(part);
  return part;
}

Split split_at(const SetNumber& number, const SplitRoom& room, std::size_t digits, double margin) {
  assert(digits > 0 && digits < number.digits.size());
  Split split{part_of(number, 0, digits), part_of(number, digits, number.digits.size())};
  const double in_whole = split.right.ink.lo.x - split.left.ink.hi.x;
  const double at_gap = room.between + 2 * margin;
  const double off = 0.5 * std::max(0.0, in_whole - at_gap);  // more than the margin, either side
  split.left_center_s = room.left.to_s - margin - off - 0.5 * split.left.ink.width();
  split.right_center_s = room.right.from_s + margin + off + 0.5 * split.right.ink.width();
  split.space = at_gap + 2 * off;
  return split;
}

bool fits(const Split& split, const SplitRoom& room, double margin) {
  const double left = split.left_center_s - 0.5 * split.left.ink.width() - margin;
  const double right = split.right_center_s + 0.5 * split.right.ink.width() + margin;
  return left >= room.left.from_s - kTouch && right <= room.right.to_s + kTouch;
}

std::optional<Split> split_number(const SetNumber& number, const SplitRoom& room, double margin,
                                  std::optional<Length> most_space) {
  std::optional<Split> best;
  const auto unlike = [](const Split& split) {
    return std::abs(split.left.ink.width() - split.right.ink.width());
  };
  for (std::size_t digits = 1; digits < number.digits.size(); ++digits) {
    Split split = split_at(number, room, digits, margin);
    if (!fits(split, room, margin)) continue;
    if (most_space && split.space > most_space->mm() + kTouch) continue;
    if (!best || unlike(split) < unlike(*best) - kTouch) best = std::move(split);
  }
  return best;
}

}  // namespace swathe
