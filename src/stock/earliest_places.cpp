#include "stock/earliest_places.hpp"

#include <algorithm>

namespace swathe {

Micron EarliestPlaces::lowest_at(std::size_t shape, Micron x) {
  taken_.clear();
  for (const Laid& other : laid_)
    table_.no_fit(other.shape, shape).overlaps_at(x - other.x, [&](Micron from, Micron to) {
      taken_.emplace_back(other.y + from, other.y + to);
    });
  work_ += static_cast<long>(laid_.size() + taken_.size());
  std::ranges::sort(taken_);
  Micron y = 0;
  for (const auto& [from, to] : taken_) {
    if (from >= y) break;
    y = std::max(y, to);
  }
  return y;
}

Laid EarliestPlaces::place_for(std::size_t shape) {
  const SteppedShape& piece = table_.shape(shape);
  std::vector<Micron> starts = {0};
  for (const Laid& other : laid_)
    for (const Micron right : table_.no_fit(other.shape, shape).rights())
      if (other.x + right > 0) starts.push_back(on_one_strip(other.x + right, piece.along, strip_));
  std::ranges::sort(starts);
  starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
  Laid laid{shape, 0, 0};
  for (const Micron x : starts) {  // past the last piece there is room
    laid = {shape, x, lowest_at(shape, x)};
    if (laid.y + piece.across <= strip_.width) break;
  }
  return laid;
}

Layout EarliestPlaces::lay(const std::vector<std::size_t>& order,
                           const std::vector<std::size_t>& shapes) {
  laid_.clear();
  Layout layout(order.size());
  const auto end = [&](const Laid& laid) { return laid.x + table_.shape(laid.shape).along; };
  for (const std::size_t piece : order) {
    Laid best;
    bool first = true;
    for (const std::size_t shape : table_.ways(piece)) {
      if (shapes[piece] != kAnyShape && shapes[piece] != shape) continue;
      const Laid laid = place_for(shape);
      if (first || std::pair(end(laid), laid.y) < std::pair(end(best), best.y)) best = laid;
      first = false;
    }
    laid_.push_back(best);
    layout[piece] = best;
  }
  return layout;
}

}  // namespace swathe
