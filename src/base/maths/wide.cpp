#include "base/maths/wide.hpp"

#include <algorithm>
#include <bit>
#include <cassert>
#include <cmath>

#include "base/maths/quick.hpp"

namespace swathe::maths {

Wide Wide::from_digits(bool negative, std::span<const std::uint32_t> digits, int exponent) {
  std::size_t top = digits.size();
  while (top > 0 && digits[top - 1] == 0) --top;
  if (top == 0) return {};
  const int shift = std::countl_zero(digits[top - 1]);
  Wide made;
  made.negative_ = negative;
  made.exponent_ = exponent - 32 * static_cast<int>(digits.size() - top) - shift;
  const auto digit = [&](std::size_t below_top) -> std::uint64_t {
    return below_top < top ? digits[top - 1 - below_top] : 0;
  };
  for (std::size_t k = 0; k < kLimbs; ++k) {
    const std::uint64_t two = digit(k) << 32 | digit(k + 1);
    made.digits_[kLimbs - 1 - k] = static_cast<std::uint32_t>(two << shift >> 32);
  }
  return made;
}

Wide::Wide(double value) {
  assert(std::isfinite(value));
  int exponent = 0;
  const double fraction = std::frexp(std::abs(value), &exponent);
  const auto bits = static_cast<std::uint64_t>(std::ldexp(fraction, 64));
  *this = from_digits(
      std::signbit(value),
      std::array{static_cast<std::uint32_t>(bits), static_cast<std::uint32_t>(bits >> 32)},
      exponent);
}

Wide Wide::scaled(int power) const {
  Wide moved = *this;
  if (!is_zero()) moved.exponent_ += power;
  return moved;
}

Wide Wide::snapped() const {
  std::array<std::uint32_t, kLimbs + 1> digits{};
  std::uint64_t carry = 0x80000000u;  // half of the last limb kept
  for (std::size_t k = 1; k < kLimbs; ++k) {
    carry += digits_[k];
    digits[k] = static_cast<std::uint32_t>(carry);
    carry >>= 32;
  }
  digits[kLimbs] = static_cast<std::uint32_t>(carry);
  digits[1] = 0;
  return from_digits(negative_, digits, exponent_ + 32);
}

double Wide::rounded() const {
  if (is_zero()) return 0.0;
  const int kept = std::min(53, exponent_ + 1074);  // bits that a double of this size has
  if (kept < 0) return negative_ ? -0.0 : 0.0;
  const std::uint64_t top = std::uint64_t{digits_[kLimbs - 1]} << 32 | digits_[kLimbs - 2];
  const bool more = std::any_of(digits_.begin(), digits_.end() - 2, [](auto d) { return d != 0; });
  std::uint64_t whole = kept == 0 ? 0 : top >> (64 - kept);
  const std::uint64_t rest = top << kept, half = std::uint64_t{1} << 63;
  if (rest > half || (rest == half && (more || whole % 2 == 1))) ++whole;
  const double size = std::ldexp(static_cast<double>(whole), exponent_ - kept);
  return negative_ ? -size : size;
}

Wide operator-(Wide a) {
  a.negative_ = !a.negative_;
  return a;
}

Wide operator+(const Wide& a, const Wide& b) {
  if (a.is_zero()) return b;
  if (b.is_zero()) return a;
  const bool a_larger = a.exponent_ != b.exponent_
                            ? a.exponent_ > b.exponent_
                            : !std::lexicographical_compare(a.digits_.rbegin(), a.digits_.rend(),
                                                            b.digits_.rbegin(), b.digits_.rend());
  const Wide &large = a_larger ? a : b, &small = a_larger ? b : a;
  const int gap = large.exponent_ - small.exponent_;
  if (gap >= 32 * static_cast<int>(Wide::kLimbs)) return large;

  const auto limbs = static_cast<std::size_t>(gap / 32);
  const int bits = gap % 32;
  const auto moved = [&](std::size_t k) -> std::uint32_t {  // of `small`, under `large`'s limb k
    const auto limb = [&](std::size_t at) -> std::uint64_t {
      return at < Wide::kLimbs ? small.digits_[at] : 0;
    };
    return static_cast<std::uint32_t>((limb(k + limbs + 1) << 32 | limb(k + limbs)) >> bits);
  };
  std::array<std::uint32_t, Wide::kLimbs + 1> digits{};
  const bool apart = a.negative_ != b.negative_;
  std::uint64_t carry = apart ? 1 : 0;  // less is: all bits turned, and one more
  for (std::size_t k = 0; k < Wide::kLimbs; ++k) {
    carry += std::uint64_t{large.digits_[k]} + (apart ? ~moved(k) : moved(k));
    digits[k] = static_cast<std::uint32_t>(carry);
    carry >>= 32;
  }
  digits.back() = apart ? 0 : static_cast<std::uint32_t>(carry);
  return Wide::from_digits(large.negative_, digits, large.exponent_ + 32);
}

Wide operator*(const Wide& a, const Wide& b) {
  std::array<std::uint32_t, 2 * Wide::kLimbs> digits{};
  for (std::size_t i = 0; i < Wide::kLimbs; ++i) {
    std::uint64_t carry = 0;
    for (std::size_t k = 0; k < Wide::kLimbs; ++k) {
      carry += std::uint64_t{a.digits_[i]} * b.digits_[k] + digits[i + k];
      digits[i + k] = static_cast<std::uint32_t>(carry);
      carry >>= 32;
    }
    digits[i + Wide::kLimbs] = static_cast<std::uint32_t>(carry);
  }
  return Wide::from_digits(a.negative_ != b.negative_, digits, a.exponent_ + b.exponent_);
}

Wide operator/(const Wide& a, std::uint32_t divisor) {
  std::array<std::uint32_t, Wide::kLimbs + 1> digits{};
  std::uint64_t rest = 0;
  for (std::size_t k = digits.size(); k-- > 0;) {
    rest = rest << 32 | (k > 0 ? a.digits_[k - 1] : 0);
    digits[k] = static_cast<std::uint32_t>(rest / divisor);
    rest %= divisor;
  }
  return Wide::from_digits(a.negative_, digits, a.exponent_);
}

Wide inverse_root(const Wide& a, int degree) {
  // a = f 2^(degree k), f from 2^-degree to 1.
  const int k = a.exponent() / degree + (a.exponent() > 0 && a.exponent() % degree != 0 ? 1 : 0);
  const Wide f = a.scaled(-degree * k), one(1.0);
  Wide y(1.0 / plain_root(f.rounded(), degree));
  for (int round = 0; round < 3; ++round)  // 53 bits, 106, 212, all
    y = y + y * (one - f * whole_power(y, degree)) / static_cast<std::uint32_t>(degree);
  return y.scaled(-k);
}

Wide root(const Wide& a, int degree) {
  return a * whole_power(inverse_root(a, degree), degree - 1);
}

Wide whole_power(const Wide& a, int power) {
  Wide product(1.0);
  for (int k = 0; k < power; ++k) product = product * a;
  return product;
}

}  // namespace swathe::maths
