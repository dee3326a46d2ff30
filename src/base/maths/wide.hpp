#pragma once

#include <array>
#include <cstdint>
#include <span>

namespace swathe::maths {

/// A floating-point number of 256 bits, made of integers alone: slow, and the same everywhere.
///
/// Sums, products and quotients by an integer are cut off, at most two units of 2^-256 of the
/// larger operand or of the result away. No exponent is too large.
class Wide {
 public:
  Wide() = default;  ///< zero
  /// Without error. Requires: a finite value.
  explicit Wide(double value);
  /// The digits as a fraction below 1, least limb first, times 2^exponent.
  static Wide from_digits(bool negative, std::span<const std::uint32_t> digits, int exponent);

  bool is_zero() const { return digits_.back() == 0; }
  /// Its size is at least 2^(exponent - 1) and below 2^exponent.
  int exponent() const { return exponent_; }
  /// This times 2^power.
  Wide scaled(int power) const;
  /// To the nearest of 192 bits: what is a short number but for errors of computing is that again.
  Wide snapped() const;
  /// The nearest double, of two the even one; also where that is subnormal or infinite.
  double rounded() const;

  friend Wide operator-(Wide a);
  friend Wide operator+(const Wide& a, const Wide& b);
  friend Wide operator-(const Wide& a, const Wide& b) { return a + -b; }
  friend Wide operator*(const Wide& a, const Wide& b);
  friend Wide operator/(const Wide& a, std::uint32_t divisor);

 private:
  static constexpr std::size_t kLimbs = 8;
  using Digits = std::array<std::uint32_t, kLimbs>;

  Digits digits_{};  // the topmost bit is set, but for zero
  int exponent_ = 0;
  bool negative_ = false;
};

/// 1 / a^(1 / degree) within some 2^-250 of itself.
///
/// Requires: a above zero, a degree from 1 to 6.
/// Source: Newton's way for y^-degree - a, from a double on: twice the digits each time.
Wide inverse_root(const Wide& a, int degree);

/// a^(1 / degree), likewise.
Wide root(const Wide& a, int degree);

/// a to a whole power from 0 on.
Wide whole_power(const Wide& a, int power);

}  // namespace swathe::maths
