#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <optional>
#include <utility>

#include "tile/tiling.hpp"

// The page's texts, each whole on one tile.
namespace swathe {
namespace {

constexpr double kTextClear = 1.0;     ///< text stays that far from a tile's edge
constexpr double kStep = 3.0;          ///< from one place tried to the next
constexpr double kNearReach = 30.0;    ///< of a moved text; most find room so near
constexpr double kStackReach = 120.0;  ///< of lines that stay together: they name what is near
constexpr double kFarReach = 450.0;    ///< past any tile of A2
constexpr double kEdge = 0.5;          ///< how much of kTextClear a moved text may use up
constexpr double kInkClear = 0.3;      ///< from a moved text to a line
constexpr double kWordClear = 1.0;     ///< to another text, lest both read as one

}  // namespace

bool Tiling::is_taken(const TextBox& box) const {
  const plane::Box around = bounds(box);
  return taken_strips_.any_near(around, [&](std::size_t k) {
    return taken_[k].around.meets(around) && overlap(box, taken_[k].box);
  });
}

std::vector<Tiling::Stack> Tiling::stacks() const {
  constexpr double kMostStep = 2.5;  // from base line to base line, of the higher line
  std::vector<Stack> all;
  for (const draw::Mark& mark : full_.drawing.marks()) {
    const auto* const text = std::get_if<TextMark>(&mark);
    if (!text) continue;
    const auto below = [&](const TextMark& last) {
      const double down = last.at.y - text->at.y;
      return text->turn == 0 && last.turn == 0 && text->anchor == last.anchor &&
             std::abs(text->at.x - last.at.x) < 1e-6 && down > 0 &&
             down < kMostStep * std::max(last.height_mm, text->height_mm);
    };
    if (all.empty() || !below(all.back().back())) all.emplace_back();
    all.back().push_back(*text);
  }
  return all;
}

void Tiling::place_texts() {
  const auto stays = [&](const Stack& stack) {
    plane::Box all;
    for (const TextMark& text : stack) all.cover(bounds(box_of(text, labels_)));
    return std::ranges::any_of(tiles_, [&](TileAt tile) { return cell(tile).holds(all); });
  };
  const std::vector<Stack> all = stacks();
  const auto put = [&](PlacedText text) {
    take(text.box);
    texts_.push_back(std::move(text));
  };
  // Those that stay come first, so that no other is moved on to them.
  for (const bool staying : {true, false})
    for (const Stack& stack : all) {
      if (stays(stack) != staying) continue;
      auto together = staying || stack.size() == 1 ? std::nullopt : placed_together(stack);
      if (together)
        for (PlacedText& text : *together) put(std::move(text));
      else
        for (const TextMark& text : stack) put(placed(text));
    }
}

/// Moved to where it lies whole, least far, and off other ink where there is such a place.
Tiling::SettledOn Tiling::settle_on_a_tile(const TextBox& box, double far_reach) const {
  SettledOn best{{{}, box, std::numeric_limits<double>::infinity()}, tiles_.front()};
  for (const double reach : {kNearReach, far_reach}) {
    for (const TileAt tile : tiles_) {
      const Settled settled =
          settle(box, cell(tile).grown(-kTextClear), reach, kStep, best.place.cost);
      if (settled.cost < best.place.cost) best = {settled, tile};
    }
    if (best.place.cost < kCrossed) break;
  }
  return best;
}

/// All lines of a stack moved alike; nothing where no tile near by has room for them.
std::optional<std::vector<Tiling::PlacedText>> Tiling::placed_together(const Stack& stack) const {
  plane::Box all;
  for (const TextMark& text : stack) all.cover(bounds(box_of(text, labels_)));
  const SettledOn found = settle_on_a_tile(box_of(all), kStackReach);
  if (found.place.cost >= kCrossed) return std::nullopt;
  std::vector<PlacedText> lines;
  for (TextMark text : stack) {
    text.at = text.at + found.place.shift;
    lines.push_back({text, box_of(text, labels_), found.tile});
  }
  return lines;
}

Tiling::PlacedText Tiling::placed(const TextMark& text) const {
  const TextBox box = box_of(text, labels_);
  const plane::Box all = bounds(box);
  for (const TileAt tile : tiles_)
    if (cell(tile).holds(all)) return {text, box, tile};
  const SettledOn found = settle_on_a_tile(box, kFarReach);
  TextMark moved = text;
  moved.at = text.at + found.place.shift;
  return {moved, found.place.box, found.tile};
}

/// The place up to `reach` away, each way in steps, where a text lies inside `room` and hides
/// least: the way moved, and much more for each stroke under it, count against a place.
Tiling::Settled Tiling::settle(const TextBox& box, const plane::Box& room, double reach,
                               double step, double worst) const {
  const plane::Box all = bounds(box);
  const auto into = [](double lo, double hi, double from, double to) {
    if (hi - lo > to - from) return 0.5 * (from + to) - 0.5 * (lo + hi);
    return lo < from ? from - lo : hi > to ? to - hi : 0.0;
  };
  const FlatPoint least{into(all.lo.x, all.hi.x, room.lo.x, room.hi.x),
                        into(all.lo.y, all.hi.y, room.lo.y, room.hi.y)};
  Settled best{{}, box, worst};
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
    best = {shift, there, cost};
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
