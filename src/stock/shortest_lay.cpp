#include "stock/shortest_lay.hpp"

#include <algorithm>
#include <limits>

namespace swathe {

bool ShortestLay::improve(Layout& best) {
  best_ = &best;
  shortest_ = length_of(best, table_);
  floor_ = table_.at_least(strip_);
  now_.assign(table_.size(), {});
  each_way(0);
  return budget_ >= 0;
}

/// Turns each piece every way, pieces that are alike in one order only.
void ShortestLay::each_way(std::size_t piece) {
  if (piece == table_.size()) {
    for (Laid& laid : now_) laid.x = laid.y = 0;
    search();
    return;
  }
  std::size_t twin = piece;  // the nearest earlier piece that is alike
  while (twin > 0 && !table_.alike(twin - 1, piece)) --twin;
  for (const std::size_t shape : table_.ways(piece)) {
    if (twin > 0 && shape < now_[twin - 1].shape) continue;
    now_[piece].shape = shape;
    const bool ordered = twin > 0 && shape == now_[twin - 1].shape;
    if (ordered) along_.push_back({twin - 1, piece, 0});
    each_way(piece + 1);
    if (ordered) along_.pop_back();
  }
}

void ShortestLay::search() {
  if (shortest_ <= floor_ || --budget_ < 0 || !settle_across() || !settle_along()) return;
  constexpr auto kNone = std::numeric_limits<std::size_t>::max();
  std::size_t first = 0, second = 0, fewest = kNone;
  for (std::size_t b = 1; b < now_.size(); ++b)
    for (std::size_t a = 0; a < b; ++a) {
      const NoFit& no_fit = table_.no_fit(now_[a].shape, now_[b].shape);
      if (!no_fit.overlap({now_[b].x - now_[a].x, now_[b].y - now_[a].y})) continue;
      const auto parts = static_cast<std::size_t>(std::ranges::count_if(
          no_fit.clear(), [&](const ClearShifts& part) { return may_help(a, b, part); }));
      if (parts >= fewest) continue;
      first = a;
      second = b;
      fewest = parts;
    }
  if (fewest == kNone) {  // all apart
    *best_ = now_;
    shortest_ = length_of(now_, table_);
  } else {
    put_apart(first, second);
  }
}

/// Whether two pieces kept apart so can still lie on the strip and short of the best lay.
bool ShortestLay::may_help(std::size_t first, std::size_t second, const ClearShifts& part) const {
  const Laid &a = now_[first], &b = now_[second];
  const SteppedShape &shape_a = table_.shape(a.shape), &shape_b = table_.shape(b.shape);
  return b.y - part.most.across + shape_a.across <= strip_.width &&
         a.y + part.least.across + shape_b.across <= strip_.width &&
         b.x - part.most.along + shape_a.along < shortest_ &&
         a.x + part.least.along + shape_b.along < shortest_;
}

void ShortestLay::put_apart(std::size_t first, std::size_t second) {
  const Layout before = now_;
  const std::size_t along = along_.size(), across = across_.size();
  for (const ClearShifts& part : table_.no_fit(now_[first].shape, now_[second].shape).clear()) {
    if (!may_help(first, second, part)) continue;
    const auto bind = [&](std::vector<Bound>& bounds, Micron least, Micron most) {
      if (least > -kNoLimit) bounds.push_back({first, second, least});
      if (most < kNoLimit) bounds.push_back({second, first, -most});
    };
    bind(along_, part.least.along, part.most.along);
    bind(across_, part.least.across, part.most.across);
    search();
    along_.resize(along);
    across_.resize(across);
    now_ = before;
  }
}

/// Moves every piece as low as its bounds let it; false where one is past the strip's edge.
bool ShortestLay::settle_across() {
  for (std::size_t pass = 0;; ++pass) {
    bool moved = false;
    for (const Bound& bound : across_)
      if (now_[bound.to].y < now_[bound.from].y + bound.least) {
        now_[bound.to].y = now_[bound.from].y + bound.least;
        moved = true;
      }
    if (!moved) break;
    if (pass >= now_.size()) return false;  // bounds that chase one another
  }
  return std::ranges::all_of(now_, [&](const Laid& laid) {
    return laid.y + table_.shape(laid.shape).across <= strip_.width;
  });
}

/// Moves every piece as near to the start as its bounds and the strips' ends let it; false where no
/// lay shorter than the best is left.
bool ShortestLay::settle_along() {
  for (std::size_t pass = 0;; ++pass) {
    bool moved = false;
    for (const Bound& bound : along_)
      if (now_[bound.to].x < now_[bound.from].x + bound.least) {
        now_[bound.to].x = now_[bound.from].x + bound.least;
        moved = true;
      }
    if (moved && pass >= now_.size()) return false;
    for (Laid& laid : now_) {
      const Micron along = table_.shape(laid.shape).along;
      const Micron x = on_one_strip(laid.x, along, strip_);
      if (x + along >= shortest_) return false;
      if (x == laid.x) continue;
      laid.x = x;
      moved = true;
      pass = 0;
    }
    if (!moved) return true;
  }
}

}  // namespace swathe
