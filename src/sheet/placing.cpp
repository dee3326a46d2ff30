#include "sheet/placing.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace swathe {
namespace {

constexpr double kSame = 0.05;  ///< mm, as patterns are compared

Placing alone(const Numerals& numerals, PlacedNumeral number) {
  Placing placing{number.text, {}, 0, 0, 0, {}};
  plane::Box all;
  for (const PlacedDigit& on : number.digits) {
    const Digit& digit = numerals.shape(on.digit);
    const FlatPoint from_center{on.origin.x - number.center_s, 0};
    const plane::Box ink = bounds(digit.outline);
    placing.digits.push_back({on.digit, ink.lo.x + from_center.x, ink.hi.x + from_center.x});
    const plane::Box with_white = digit.white ? bounds(digit.white->outline) : ink;
    all.cover(with_white.lo + from_center);
    all.cover(with_white.hi + from_center);
  }
  placing.left = all.lo.x;
  placing.right = all.hi.x;
  placing.low = all.lo.y;
  placing.places.push_back(std::move(number));
  return placing;
}

bool same(const Placing& a, const Placing& b) {
  return a.text == b.text &&
         std::ranges::equal(a.digits, b.digits, [](const DigitPlace& p, const DigitPlace& q) {
           return std::abs(p.left - q.left) < kSame && std::abs(p.right - q.right) < kSame;
         });
}

plane::Box cloth_of(const Made& made, const PlacedNumeral& number) {
  return bounds(made.patterns[static_cast<std::size_t>(number.bumper)].outline);
}

}  // namespace

std::vector<Placing> placings(const Made& made) {
  std::vector<Placing> all;
  for (PlacedNumeral& number : made.numerals_on_patterns()) {
    if (number.digits.empty()) continue;
    Placing own = alone(*made.numerals, std::move(number));
    const auto like = std::ranges::find_if(all, [&](const Placing& p) { return same(p, own); });
    if (like == all.end())
      all.push_back(std::move(own));
    else
      like->places.push_back(std::move(own.places.front()));
  }
  return all;
}

double base_above_edge(const Made& made, const PlacedNumeral& on_pattern) {
  return on_pattern.digits.front().origin.y - cloth_of(made, on_pattern).lo.y;
}

double center_from_edge(const Made& made, const PlacedNumeral& on_pattern) {
  return on_pattern.center_s - cloth_of(made, on_pattern).lo.x;
}

bool is_one_sheet(const NumeralKeys& keys) {
  return keys.method == NumeralMethod::PaintMask ||
         (keys.method == NumeralMethod::Stencil && keys.stencil_for == StencilFor::Number);
}

}  // namespace swathe
