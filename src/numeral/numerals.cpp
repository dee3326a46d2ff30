#include "swathe/numeral/numerals.hpp"

#include <algorithm>
#include <cassert>

namespace swathe {

const Digit& Numerals::shape(char digit) const {
  const auto found = std::ranges::find(digits, digit, &Digit::digit);
  assert(found != digits.end());
  return *found;
}

Region Numerals::on_pattern(const PlacedDigit& on) const {
  Region region = shape(on.digit).outline;
  for (Polygon& contour : region)
    for (FlatPoint& p : contour) p = p + on.origin;
  return region;
}

}  // namespace swathe
