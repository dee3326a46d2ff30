#include "stock/strip_table.hpp"

#include <algorithm>
#include <limits>

namespace swathe {

StripTable::StripTable(const std::vector<StripPiece>& pieces) {
  take(pieces, std::numeric_limits<std::size_t>::max());
  if (shapes_.size() > kMostShapes) take(pieces, 1);
  if (shapes_.size() > kMostShapes || pieces.size() > kMostPieces) return;
  for (const SteppedShape& first : shapes_)
    for (const SteppedShape& second : shapes_) no_fits_.emplace_back(first, second);
}

void StripTable::take(const std::vector<StripPiece>& pieces, std::size_t most_ways) {
  shapes_.clear();
  ways_.assign(pieces.size(), {});
  shape_of_way_.assign(pieces.size(), {});
  for (std::size_t piece = 0; piece < pieces.size(); ++piece)
    for (const SteppedShape& way : pieces[piece].ways) {
      std::vector<std::size_t>& ways = ways_[piece];
      if (ways.size() == most_ways) break;
      const auto found = std::ranges::find(shapes_, way);
      const auto number = static_cast<std::size_t>(found - shapes_.begin());
      if (found == shapes_.end()) shapes_.push_back(way);
      shape_of_way_[piece].push_back(number);
      if (std::ranges::find(ways, number) == ways.end()) ways.push_back(number);
    }
}

std::size_t StripTable::way_of(std::size_t piece, std::size_t shape) const {
  const auto& all = shape_of_way_[piece];
  return static_cast<std::size_t>(std::ranges::find(all, shape) - all.begin());
}

Micron StripTable::at_least(const Strip& strip) const {
  Micron longest = 0;
  double cloth = 0;
  for (const auto& ways : ways_) {
    Micron along = kNoLimit;
    for (const std::size_t way : ways) along = std::min(along, shapes_[way].along);
    longest = std::max(longest, along);
    for (const Step& step : shapes_[ways.front()].steps)
      cloth += static_cast<double>(step.to_y - step.from_y) *
               static_cast<double>(step.to_x - step.from_x);
  }
  return std::max(longest, static_cast<Micron>(cloth / static_cast<double>(strip.width)));
}

Micron length_of(const Layout& layout, const StripTable& table) {
  Micron length = 0;
  for (const Laid& laid : layout) length = std::max(length, laid.x + table.shape(laid.shape).along);
  return length;
}

Micron on_one_strip(Micron x, Micron along, const Strip& strip) {
  const Micron start = x / strip.length * strip.length;
  return x + along > start + strip.length ? start + strip.length : x;
}

}  // namespace swathe
