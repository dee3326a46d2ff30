#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

#include "base/maths.hpp"
#include "base/maths/quick.hpp"
#include "base/maths/slow.hpp"

namespace swathe::maths {

double plain_root(double a, int degree) {
  assert(degree >= 1 && degree <= 6);
  if (degree == 1) return a;
  if (degree == 2) return std::sqrt(a);
  double root = 0.6 + 0.4 * a;  // then Newton's way: six rounds are enough to degree 6
  for (int round = 0; round < 6; ++round) {
    double below = root;
    for (int k = 2; k < degree; ++k) below *= root;
    root -= (root - a / below) / degree;
  }
  return root;
}

namespace quick {
namespace {

constexpr double kRelative = 0x1p-95;  // double-double throughout, at most twenty products

DoubleDouble whole_power(DoubleDouble a, int power) {
  DoubleDouble made{1, 0};
  for (; power > 0; power /= 2) {
    if (power % 2 == 1) made = product(made, a);
    if (power > 1) a = product(a, a);
  }
  return made;
}

}  // namespace

Estimate hypotenuse(double x, double y) {
  const DoubleDouble root = square_root(sum(two_product(x, x), two_product(y, y)));
  return {root, kRelative * root.hi};
}

Estimate power(double base, int over, int under) {
  assert(base > 0 && over >= 1 && over <= 16 && under >= 1 && under <= 6);
  const DoubleDouble raised = whole_power({base, 0}, over);
  int exponent = 0;
  std::frexp(raised.hi, &exponent);
  const int turns = exponent / under + (exponent > 0 && exponent % under != 0 ? 1 : 0);
  const double scale = std::ldexp(1.0, -under * turns);
  const DoubleDouble a{raised.hi * scale, raised.lo * scale};
  const double root = plain_root(a.hi, under);
  // One step of Newton's from there, with the remainder in double-double.
  const DoubleDouble below = whole_power({root, 0}, under - 1);
  const DoubleDouble left = sum(a, -product(below, {root, 0}));
  const DoubleDouble better = fast_two_sum(root, left.hi / (under * below.hi));
  const double back = std::ldexp(1.0, turns);
  return {{better.hi * back, better.lo * back}, kRelative * better.hi * back};
}

}  // namespace quick

double hypot(double x, double y) {
  if (std::isinf(x) || std::isinf(y)) return std::numeric_limits<double>::infinity();
  if (std::isnan(x) || std::isnan(y)) return std::numeric_limits<double>::quiet_NaN();
  const double most = std::max(std::abs(x), std::abs(y)),
               least = std::min(std::abs(x), std::abs(y));
  if (least == 0.0) return most;
  if (least < 0x1p-400 || most > 0x1p400) return slow::hypotenuse(x, y);
  return nearest(quick::hypotenuse(x, y), [&] { return slow::hypotenuse(x, y); });
}

double power(double base, int over, int under) {
  assert(base >= 0 && base < std::numeric_limits<double>::infinity());
  assert(over >= 1 && over <= 16 && under >= 1 && under <= 6);
  if (base == 0.0) return 0.0;
  if (base < 0x1p-40 || base > 0x1p40) return slow::power(base, over, under);
  return nearest(quick::power(base, over, under), [&] { return slow::power(base, over, under); });
}

}  // namespace swathe::maths
