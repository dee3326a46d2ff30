#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/maths.hpp"
#include "base/maths/quick.hpp"
#include "base/maths/slow.hpp"
#include "base/maths/tables.hpp"

namespace swathe::maths {
namespace {

constexpr double kRelative = 0x1p-66;  // terms that are plain doubles are at most 2^-17 of it

/// Of y over x, from 0 to 1: atan(y / x) = atan c + atan((y - c x) / (x + c y)), where c is the
/// nearest 128th, so that the second is small.
DoubleDouble arc_tangent(DoubleDouble y, DoubleDouble x) {
  constexpr double kWhole = 0x1.8p52, kParts = 128;
  const double part = (kParts * (y.hi / x.hi) + kWhole) - kWhole, c = part / kParts;
  // A 128th times either half of a double-double is a product of two_product's kind.
  const DoubleDouble c_x = two_product(c, x.hi), c_y = two_product(c, y.hi);
  const DoubleDouble t =
      quotient(sum(y, {-c_x.hi, -c_x.lo - c * x.lo}), sum(x, {c_y.hi, c_y.lo + c * y.lo}));
  const double z = t.hi * t.hi;
  const double bend = t.hi * z * (-1.0 / 3 + z * (1.0 / 5 - z * (1.0 / 7 - z * (1.0 / 9))));
  const DoubleDouble& near = kArcTangents[static_cast<std::size_t>(part)];
  const DoubleDouble straight = two_sum(near.hi, t.hi);
  return fast_two_sum(straight.hi, straight.lo + (near.lo + t.lo + bend));
}

/// Of y over x, neither below 0.
DoubleDouble in_quarter(DoubleDouble y, DoubleDouble x) {
  return y.hi <= x.hi ? arc_tangent(y, x) : sum(kHalfPi, -arc_tangent(x, y));
}

Estimate estimate(DoubleDouble value) { return {value, kRelative * std::abs(value.hi)}; }

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

}  // namespace

namespace quick {

Estimate angle(double y, double x) {
  DoubleDouble size = in_quarter({std::abs(y), 0}, {std::abs(x), 0});
  if (x < 0) size = sum(kPi, -size);
  return estimate(y < 0 ? -size : size);
}

Estimate arc_cosine(double cosine) {
  const double size = std::abs(cosine);
  const DoubleDouble sine = square_root(product(two_sum(1, -size), two_sum(1, size)));
  const DoubleDouble angle = in_quarter(sine, {size, 0});
  return estimate(cosine < 0 ? sum(kPi, -angle) : angle);
}

}  // namespace quick

namespace {

int exponent_of(double a) {
  int exponent = 0;
  std::frexp(a, &exponent);
  return exponent;
}

/// Where zeros, what is not finite, or sizes far apart or far from 1 want care.
double rare_angle(double y, double x) {
  if (std::isnan(y) || std::isnan(x)) return kNoNumber;
  if (std::isinf(y) && std::isinf(x))
    return std::copysign(x > 0 ? 0.25 * std::numbers::pi : 0x1.2d97c7f3321d2p1, y);  // 3/4 pi
  const bool back = std::signbit(x);
  if (y == 0.0 || std::isinf(x)) return std::copysign(back ? std::numbers::pi : 0.0, y);
  if (x == 0.0 || std::isinf(y)) return std::copysign(0.5 * std::numbers::pi, y);

  // Far apart in size they make an angle next to an axis.
  const int of_x = exponent_of(x), gap = exponent_of(y) - of_x;
  constexpr int kFar = 120;
  if (gap > kFar) return std::copysign(0.5 * std::numbers::pi, y);
  if (gap < -kFar && back) return std::copysign(std::numbers::pi, y);
  if (gap < -kFar) {
    const double ratio = std::abs(y / x);
    const bool full = ratio >= 2 * std::numeric_limits<double>::min();  // has all its digits
    return std::copysign(full ? ratio : slow::just_below_quotient(std::abs(y), x), y);
  }
  if (std::abs(of_x) > 150) {  // on to a size where nothing is too large or small; exact
    y = std::ldexp(y, -of_x);
    x = std::ldexp(x, -of_x);
  }
  return nearest(quick::angle(y, x), [&] { return slow::angle(y, x); });
}

}  // namespace

double acos(double cosine) {
  const double size = std::abs(cosine);
  if (size == 1.0) return cosine > 0 ? 0.0 : std::numbers::pi;
  if (size < 0x1p-60) return 0.5 * std::numbers::pi;
  if (!(size < 1.0)) return kNoNumber;
  return nearest(quick::arc_cosine(cosine), [&] { return slow::arc_cosine(cosine); });
}

double atan(double tangent) { return atan2(tangent, 1.0); }

double atan2(double y, double x) {
  const double size_y = std::abs(y), size_x = std::abs(x);
  constexpr double kLeast = 0x1p-60, kMost = 0x1p60;
  if (!(size_y > kLeast && size_y < kMost && size_x > kLeast && size_x < kMost))
    return rare_angle(y, x);
  return nearest(quick::angle(y, x), [&] { return slow::angle(y, x); });
}

}  // namespace swathe::maths
