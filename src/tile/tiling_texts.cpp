#include <algorithm>
#include <cstdlib>
#include <limits>

#include "tile/tiling.hpp"

// The page's texts, each whole on one tile.
namespace swathe {
namespace {

constexpr double kTextClear = 1.0;   ///< text stays that far from a tile's edge
constexpr double kStep = 3.0;        ///< from one place tried to the next
constexpr double kNearReach = 30.0;  ///< of a moved text; most find room so near
constexpr double kFarReach = 450.0;  ///< past any tile of A2
constexpr double kEdge = 0.5;        ///< how much of kTextClear a moved text may use up
constexpr double kInkClear = 0.3;    ///< from a moved text to a line
constexpr double kWordClear = 1.0;   ///< to another text, lest both read as one

}  // namespace

bool Tiling::is_taken(const TextBox& box) const {
  const plane::Box around = bounds(box);
  return taken_strips_.any_near(around, [&](std::size_t k) {
    return taken_[k].around.meets(around) && overlap(box, taken_[k].box);
  });
}

void Tiling::place_texts() {
  const auto stays = [&](const TextMark& text) {
    const plane::Box all = bounds(box_of(text, labels_));
    return std::ranges::any_of(tiles_, [&](TileAt tile) { return cell(tile).holds(all); });
  };
  // Those that stay come first, so that no other is moved on to them.
  for (const bool staying : {true, false})
    for (const draw::Mark& mark : full_.drawing.marks())
      if (const auto* const text = std::get_if<TextMark>(&mark); text && stays(*text) == staying) {
        texts_.push_back(placed(*text));
        take(texts_.back().box);
      }
}

Tiling::PlacedText Tiling::placed(const TextMark& text) const {
  const TextBox box = box_of(text, labels_);
  const plane::Box all = bounds(box);
  for (const TileAt tile : tiles_)
    if (cell(tile).holds(all)) return {text, box, tile};

  // Moved to where it lies whole, least far, and off other ink where there is such a place.
  PlacedText best{text, box, tiles_.front()};
  double cost = std::numeric_limits<double>::infinity();
  for (const double reach : {kNearReach, kFarReach}) {
    for (const TileAt tile : tiles_) {
      const Settled settled = settle(text, cell(tile).grown(-kTextClear), reach, kStep, cost);
      if (settled.cost < cost) best = {settled.text, settled.box, tile};
      cost = std::min(cost, settled.cost);
    }
    if (cost < kCrossed) break;
  }
  return best;
}

/// The place up to `reach` away, each way in steps, where a text lies inside `room` and hides
/// least: the way moved, and much more for each stroke under it, count against a place.
Tiling::Settled Tiling::settle(const TextMark& text, const plane::Box& room, double reach,
                               double step, double worst) const {
  const TextBox box = box_of(text, labels_);
  const plane::Box all = bounds(box);
  const auto into = [](double lo, double hi, double from, double to) {
    if (hi - lo > to - from) return 0.5 * (from + to) - 0.5 * (lo + hi);
    return lo < from ? from - lo : hi > to ? to - hi : 0.0;
  };
  const FlatPoint least{into(all.lo.x, all.hi.x, room.lo.x, room.hi.x),
                        into(all.lo.y, all.hi.y, room.lo.y, room.hi.y)};
  Settled best{text, box, worst};
  if (norm(least) - kEdge >= worst) return best;  // no place of this room is nearer
  const auto try_place = [&](FlatPoint way) {
    const FlatPoint shift = least + way;
    double cost = norm(shift);
    if (cost >= best.cost) return;
    const bool moved = way != FlatPoint{};
    if (moved && !room.grown(kEdge).holds(plane::Box{all.lo + shift, all.hi + shift})) return;
    TextBox there = box;
    there.middle = box.middle + shift;
    if (is_taken(shift != FlatPoint{} ? there.grown(kWordClear) : there)) cost += 10 * kCrossed;
    if (cost >= best.cost) return;
    cost += kCrossed * static_cast<double>(crossings_.of(there.grown(kInkClear)));
    if (cost >= best.cost) return;
    best = {text, there, cost};
    best.text.at = text.at + shift;
  };
  // Ring by ring outwards: what is found early rules out all that is farther.
  const int rings = static_cast<int>(reach / step);
  for (int ring = 0; ring <= rings && step * ring - norm(least) < best.cost; ++ring)
    for (int dx = -ring; dx <= ring; ++dx) {
      const int dy_step = std::abs(dx) == ring ? 1 : 2 * ring;
      for (int dy = -ring; dy <= ring; dy += dy_step) try_place({step * dx, step * dy});
    }
  return best;
}

}  // namespace swathe
