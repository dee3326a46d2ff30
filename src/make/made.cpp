#include "swathe/make/made.hpp"

namespace swathe {

std::vector<PlacedNumeral> Made::numerals_on_patterns() const {
  std::vector<PlacedNumeral> laid;
  if (!numerals) return laid;
  for (const PlacedNumeral& placed : numerals->placed)
    laid.push_back(on_pattern(placed, cloth_map()));
  return laid;
}

}  // namespace swathe
