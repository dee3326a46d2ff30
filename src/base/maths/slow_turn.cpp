#include "base/maths/slow_turn.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "base/maths/slow.hpp"
#include "base/maths/tables.hpp"

namespace swathe::maths::slow {
namespace {

/// An angle as so many quarter turns, less whole turns, and a rest of at most an eighth.
struct Quarters {
  int quarters = 0;
  Wide rest;
};

/// Source: M. H. Payne and R. N. Hanek, "Radian reduction for trigonometric functions", SIGNUM
/// Newsletter 18 (1983) (from memory): of the digits of 2 / pi, those that make whole turns of the
/// angle are left out at the front, and those too small to matter at the end.
Quarters in_quarters(double radians) {
  int exponent = 0;
  const double fraction = std::frexp(std::abs(radians), &exponent);
  exponent -= 53;
  const auto whole = static_cast<std::uint64_t>(std::ldexp(fraction, 53));  // times 2^exponent

  constexpr std::size_t kWindow = 12;
  const auto first = static_cast<std::size_t>(exponent > 2 ? (exponent - 2) / 32 : 0);
  std::array<std::uint32_t, kWindow + 2> digits{};  // least first
  for (std::size_t i = 0; i < 2; ++i) {
    const std::uint64_t half = static_cast<std::uint32_t>(whole >> (32 * i));
    std::uint64_t carry = 0;
    for (std::size_t k = 0; k < kWindow; ++k) {
      carry += half * kTwoOverPi[first + kWindow - 1 - k] + digits[i + k];
      digits[i + k] = static_cast<std::uint32_t>(carry);
      carry >>= 32;
    }
    digits[i + kWindow] = static_cast<std::uint32_t>(carry);
  }

  // So many of the digits' bits stand after the point; above it is the number of quarters.
  const int after = 32 * static_cast<int>(kWindow + first) - exponent;
  const auto bit = [&](int at) -> int {
    const auto limb = static_cast<std::size_t>(at / 32);
    return limb < digits.size() ? static_cast<int>(digits[limb] >> (at % 32) & 1) : 0;
  };
  int quarters = bit(after) + 2 * bit(after + 1);
  const bool down = bit(after - 1) == 1;  // past the middle: from the next quarter backwards
  if (down) ++quarters;
  for (std::size_t k = 0; k < digits.size(); ++k) {
    const int kept = std::clamp(after - 32 * static_cast<int>(k), 0, 32);
    if (down) digits[k] = ~digits[k];
    digits[k] &= static_cast<std::uint32_t>((std::uint64_t{1} << kept) - 1);
  }
  const int top = 32 * static_cast<int>(digits.size()) - after;
  const Wide quarter_pi = Wide::from_digits(false, kQuarterPi, 0);
  Wide rest = Wide::from_digits(down, digits, top) * quarter_pi.scaled(1);
  if (radians < 0) rest = -rest;
  return {(radians < 0 ? -quarters : quarters) & 3, rest};
}

/// first - first z / (n (n + 1)) + ..., of which each term has two factors more below: Taylor's
/// series of the sine from (r, n = 2), of the cosine from (1, n = 1).
Wide series(const Wide& first, const Wide& z, std::uint32_t n) {
  Wide sum = first, term = first;
  while (!term.is_zero() && term.exponent() > sum.exponent() - 260) {
    term = -(term * z / (n * (n + 1)));
    sum = sum + term;
    n += 2;
  }
  return sum;
}

}  // namespace

SineCosine sine_cosine(double radians) {
  const Quarters a = in_quarters(radians);
  const Wide z = a.rest * a.rest;
  SineCosine made{series(a.rest, z, 2), series(Wide(1.0), z, 1)};
  if (a.quarters % 2 == 1) made = {made.cosine, -made.sine};
  return a.quarters < 2 ? made : SineCosine{-made.sine, -made.cosine};
}

double sine(double radians) { return sine_cosine(radians).sine.rounded(); }

double cosine(double radians) { return sine_cosine(radians).cosine.rounded(); }

double tangent(double radians) {
  const SineCosine a = sine_cosine(radians);
  return (a.sine * a.cosine * inverse_root(a.cosine * a.cosine, 1)).rounded();
}

}  // namespace swathe::maths::slow
