#include <algorithm>
#include <cassert>

#include "swathe/numeral.hpp"

namespace swathe {

const Digit& Numerals::shape(char digit) const {
  const auto found = std::ranges::find(digits, digit, &Digit::digit);
  assert(found != digits.end());
  return *found;
}

plane::Region Numerals::outline_of(const PlacedDigit& on) const {
  plane::Region region = shape(on.digit).outline;
  for (plane::Polygon& contour : region)
    for (FlatPoint& p : contour) p = p + on.origin;
  return region;
}

PlacedNumeral on_pattern(PlacedNumeral numeral, const ClothMap& map) {
  const FlatPoint in_place{numeral.center_s, numeral.center_u};
  const FlatPoint laid = map.to_pattern({in_place.x, in_place.y});
  numeral.center_s = laid.x;
  numeral.center_u = laid.y;
  for (PlacedDigit& digit : numeral.digits) digit.origin = digit.origin + (laid - in_place);
  return numeral;
}

}  // namespace swathe
