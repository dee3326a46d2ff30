#include <algorithm>
#include <bit>
#include <cstdint>

#include "swathe/numeral.hpp"

namespace swathe {
namespace {

/// Compares the bits: == takes 0 and -0 as equal.
bool same_bits(double a, double b) {
  return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

bool same_bits(const plane::Region& a, const plane::Region& b) {
  const auto same_points = [](FlatPoint p, FlatPoint q) {
    return same_bits(p.x, q.x) && same_bits(p.y, q.y);
  };
  return std::ranges::equal(a, b, [&](const plane::Polygon& p, const plane::Polygon& q) {
    return std::ranges::equal(p, q, same_points);
  });
}

}  // namespace

const Digit* kept_digit(const KeptDigits& kept, const DigitOutline& drawn,
                        const NumeralKeys& keys) {
  if (kept.method != keys.method || !same_bits(kept.bridge.mm(), keys.bridge.mm()) ||
      !same_bits(kept.outline.mm(), keys.outline.mm()))
    return nullptr;
  const auto found = std::ranges::find_if(kept.digits, [&](const Digit& digit) {
    return digit.digit == drawn.digit && same_bits(digit.advance, drawn.advance) &&
           same_bits(digit.height, drawn.ink.height()) &&
           same_bits(digit.width, drawn.ink.width()) && same_bits(digit.outline, drawn.outline);
  });
  return found == kept.digits.end() ? nullptr : &*found;
}

}  // namespace swathe
