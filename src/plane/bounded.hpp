#pragma once

#include <cmath>
#include <limits>

#include "base/maths/double_double.hpp"

namespace swathe::plane {

/// A number of twice a double's digits that knows how far it may be from what it stands for.
class Bounded {
 public:
  /// Without error.
  explicit Bounded(double value) : value_{value, 0} {}

  double value() const { return value_.hi; }
  /// Whether the value is right to within `share` of itself.
  bool within(double share) const { return off_ <= share * std::abs(value_.hi); }

  friend Bounded operator-(Bounded a) { return {-a.value_, a.off_}; }
  friend Bounded operator+(Bounded a, Bounded b) {
    return {maths::sum(a.value_, b.value_), a.off_ + b.off_ + kUnit * (a.size() + b.size())};
  }
  friend Bounded operator-(Bounded a, Bounded b) { return a + -b; }
  friend Bounded operator*(Bounded a, Bounded b) {
    return {maths::product(a.value_, b.value_),
            a.size() * b.off_ + (b.size() + b.off_) * a.off_ + kUnit * a.size() * b.size()};
  }
  friend Bounded operator/(Bounded a, Bounded b) {
    if (!(b.size() > 2 * b.off_)) return unknown();  // might be zero
    const maths::DoubleDouble quotient = maths::quotient(a.value_, b.value_);
    const double size = std::abs(quotient.hi);
    return {quotient, (a.off_ + size * b.off_) / (b.size() - b.off_) + kUnit * size};
  }
  friend Bounded abs(Bounded a) { return a.value_.hi < 0 ? -a : a; }
  friend Bounded square_root(Bounded a) {
    if (a.value_.hi == 0 && a.off_ == 0) return a;
    if (!(a.value_.hi > 2 * a.off_)) return unknown();
    const maths::DoubleDouble root = maths::square_root(a.value_);
    return {root, a.off_ / root.hi + kUnit * root.hi};
  }
  /// a.x b.y - a.y b.x, without error. Requires: whole numbers below 2^50.
  static Bounded whole_cross(double ax, double ay, double bx, double by) {
    return {maths::sum(maths::two_product(ax, by), -maths::two_product(ay, bx)), 0};
  }

 private:
  /// What a step of double_double.hpp may be off, as a share of its operands or its result: some
  /// 2^-102. The rest is for the bounds, which are rounded themselves.
  static constexpr double kUnit = 0x1p-100;

  Bounded(maths::DoubleDouble value, double off) : value_(value), off_(off) {}
  static Bounded unknown() { return {{0, 0}, std::numeric_limits<double>::infinity()}; }
  double size() const { return std::abs(value_.hi); }

  maths::DoubleDouble value_;
  double off_ = 0;
};

}  // namespace swathe::plane
