#pragma once

#include <utility>
#include <vector>

#include "stock/strip_table.hpp"

namespace swathe {

inline constexpr std::size_t kAnyShape = static_cast<std::size_t>(-1);

/// Puts one piece after another where it ends earliest, then lowest.
class EarliestPlaces {
 public:
  EarliestPlaces(const StripTable& table, const Strip& strip) : table_(table), strip_(strip) {}

  /// `shapes` has each piece's shape, or kAnyShape for the one of its ways that ends earliest.
  Layout lay(const std::vector<std::size_t>& order, const std::vector<std::size_t>& shapes);
  /// What all lays so far have cost: stretches looked at.
  long work() const { return work_; }

 private:
  Laid place_for(std::size_t shape);
  /// The lowest place at `x`, which may be past the strip's edge.
  Micron lowest_at(std::size_t shape, Micron x);

  const StripTable& table_;
  Strip strip_;
  std::vector<Laid> laid_;
  std::vector<std::pair<Micron, Micron>> taken_;
  long work_ = 0;
};

}  // namespace swathe
