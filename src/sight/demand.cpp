#include "sight/demand.hpp"

#include <algorithm>

namespace swathe {

Demand demand_of(const Season* season) {
  Demand demand;
  if (season == nullptr) return demand;
  if (season->numerals_viewpoints) demand.viewpoints = season->numerals_viewpoints->value;
  if (season->numerals_read_from) demand.distance = season->numerals_read_from->value;
  return demand;
}

double least_fraction(const std::vector<SightRing>& rings) {
  double least = rings.empty() ? 0.0 : 1.0;
  for (const SightRing& ring : rings) least = std::min(least, ring.fraction(Reads::Number));
  return least;
}

bool meets(double fraction, Viewpoints viewpoints) {
  return viewpoints == Viewpoints::Most ? fraction > kMost : fraction >= kEvery;
}

}  // namespace swathe
