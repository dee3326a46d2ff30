#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <tuple>
#include <utility>

#include "draw/furniture.hpp"
#include "draw/marks.hpp"
#include "tile/texts.hpp"
#include "tile/tiling.hpp"

// Where tiles meet, and how a hand finds it.
namespace swathe {
namespace {

using tile_texts::say;

constexpr double kTextClear = 1.0;   ///< a name stays that far from a tile's edge
constexpr double kStep = 3.0;        ///< from one place tried to the next
constexpr double kNameReach = 18.0;  ///< of a neighbor's name from its diamond
constexpr double kNameStep = 2.0;
constexpr double kBesideReach = 15.5;  ///< half of a diamond with its name beside it

}  // namespace

void Tiling::find_joints() {
  for (const TileAt tile : tiles_) {
    const auto [column, row] = tile;
    if (grid_.has(column + 1, row)) add_joint(tile, {column + 1, row}, true);
    if (grid_.has(column, row + 1)) add_joint(tile, {column, row + 1}, false);
  }
}

void Tiling::add_joint(TileAt before, TileAt after, bool upright) {
  const plane::Box own = cell(before), next = cell(after);
  Joint joint{before, after, upright, {}, {}, {}};
  joint.from = upright ? FlatPoint{own.hi.x, own.hi.y} : FlatPoint{own.lo.x, own.lo.y};
  joint.to = upright ? FlatPoint{own.hi.x, std::max(own.lo.y, next.lo.y)}
                     : FlatPoint{std::min(own.hi.x, next.hi.x), own.lo.y};
  const std::vector<FlatPoint> spots = diamond_spots(joint);
  const FlatPoint along = unit(joint.to - joint.from);
  for (const FlatPoint spot : spots) take({spot, along, kDiamondHalf, kDiamondDepth});
  for (const FlatPoint spot : spots) {
    joint.diamonds.push_back({spot, {}, {}});
    for (const bool on_before : {true, false}) {
      TextMark& name = on_before ? joint.diamonds.back().on_before : joint.diamonds.back().on_after;
      name = neighbor_name(joint, spot, on_before);
      take(box_of(name, labels_));
    }
  }
  joints_.push_back(std::move(joint));
}

/// Two spots where both diamonds and their names are free of texts and ink; else the one that is;
/// else one where at least the diamond lies over no text and hides least.
std::vector<FlatPoint> Tiling::diamond_spots(const Joint& joint) const {
  const double long_way = apart(joint.from, joint.to);
  const FlatPoint along = unit(joint.to - joint.from);
  // The ground of a diamond and both its names.
  const TextBox ground = joint.upright
                             ? TextBox{{0, 0}, {1, 0}, 25.0, 5.0}
                             : TextBox{{kBesideReach - 5.0, 0}, {1, 0}, kBesideReach, 6.5};
  const double start = 6.0, end = joint.upright ? 6.0 : 2 * kBesideReach - 4.0;
  struct Spot {
    double at;
    std::size_t crossed;
    double off;
  };
  std::vector<Spot> free;
  for (int k = 0; start + k * kStep <= long_way - end; ++k) {
    const double at = start + k * kStep;
    TextBox here = ground;
    here.middle = here.middle + joint.from + at * along;
    if (!is_taken(here)) free.push_back({at, crossings_.of(here), 0});
  }
  std::vector<FlatPoint> spots;
  for (const double share : {0.25, 0.75}) {
    for (Spot& spot : free) spot.off = std::abs(spot.at - share * long_way);
    const auto best = std::ranges::min_element(free, [](const Spot& a, const Spot& b) {
      return std::tie(a.crossed, a.off) < std::tie(b.crossed, b.off);
    });
    if (best == free.end() || (best->crossed > 0 && !spots.empty())) continue;
    const double at = best->at, apart_by = joint.upright ? 12.0 : 2 * kBesideReach;
    spots.push_back(joint.from + at * along);
    std::erase_if(free, [&](const Spot& s) { return std::abs(s.at - at) < apart_by; });
  }
  if (!spots.empty()) return spots;
  // Where no spot has room for both names beside it, they find some a little way off.
  std::optional<Spot> best;
  for (int k = 0; start + k * kStep <= long_way - start; ++k) {
    const double at = start + k * kStep;
    const TextBox own{joint.from + at * along, along, kDiamondHalf + 1.0, kDiamondDepth + 1.0};
    if (is_taken(own)) continue;
    const Spot spot{at, crossings_.of(own), std::abs(at - 0.5 * long_way)};
    if (!best || std::tie(spot.crossed, spot.off) < std::tie(best->crossed, best->off)) best = spot;
  }
  return {joint.from + (best ? best->at : 0.5 * long_way) * along};
}

/// Beside its half of the diamond, as near as it lies over no ink; where the ink leaves no room for
/// "JOIN 7", smaller, and then "7" alone.
TextMark Tiling::neighbor_name(const Joint& joint, FlatPoint diamond, bool on_before) const {
  const TileAt neighbor = on_before ? joint.after : joint.before;
  const plane::Box room = cell(on_before ? joint.before : joint.after).grown(-kTextClear);
  const FlatPoint inward = joint.inward(on_before);
  const std::string join = say("join.tile", {{"tile", name(neighbor)}});
  const std::pair<std::string, double> ways[] = {
      {join, kTextHeight}, {join, kTableHeight}, {name(neighbor), kTextHeight}};
  TextMark best;
  double best_cost = std::numeric_limits<double>::infinity();
  for (const auto& [words, height] : ways) {
    TextMark text{{}, words, height};
    if (joint.upright) {
      text.at = diamond + (kDiamondDepth + 1.5) * inward - FlatPoint{0, 0.5 * height};
      if (on_before) text.anchor = draw::Anchor::Right;
    } else {
      text.at = diamond + FlatPoint{kDiamondHalf + 1.0, on_before ? 1.5 : -1.5 - height};
    }
    const Settled settled = settle(box_of(text, labels_), room, kNameReach, kNameStep);
    if (settled.cost < best_cost) {
      best = text;
      best.at = text.at + settled.shift;
      best_cost = settled.cost;
    }
    if (best_cost < kCrossed) break;
  }
  return best;
}

void Tiling::draw_joint(Drawing& onto, const Joint& joint, bool before) const {
  for (const Joint::Diamond& diamond : joint.diamonds) {
    draw_half_diamond(onto, diamond.middle, joint.inward(before));
    onto.text(before ? diamond.on_before : diamond.on_after);
  }
}

}  // namespace swathe
