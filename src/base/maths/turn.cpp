#include <cassert>
#include <cmath>
#include <limits>

#include "base/maths.hpp"
#include "base/maths/quick.hpp"
#include "base/maths/slow.hpp"
#include "base/maths/tables.hpp"

namespace swathe::maths {
namespace {

// The result's error: terms that are plain doubles are at most 2^-17 of it, each rounded some five
// times.
constexpr double kRelative = 0x1p-66;
// The rest's error, for each step taken off: the last of the parts goes to 2^-137.
constexpr double kPerStep = 0x1p-132;

/// An angle as so many steps, and a rest of at most half a step.
struct Steps {
  int steps = 0;
  DoubleDouble rest;
};

/// Source: W. J. Cody and W. Waite, Software Manual for the Elementary Functions, 1980 (from
/// memory): steps times either short part is exact, and so is the first difference.
Steps in_steps(double radians) {
  assert(std::abs(radians) <= quick::kMostRadians);
  constexpr double kWhole = 0x1.8p52;  // a sum with it has no fraction
  const double steps = (radians * kStepsPerRadian + kWhole) - kWhole;
  const double near = radians - steps * kStepParts[0];
  const DoubleDouble rest = two_sum(near, -steps * kStepParts[1]);
  return {static_cast<int>(steps), fast_two_sum(rest.hi, rest.lo - steps * kStepParts[2])};
}

/// sin(a + r) = sin a + cos a r + (sin a (cos r - 1) + cos a (sin r - r)), the last by Taylor.
DoubleDouble sine_of(int steps, DoubleDouble rest) {
  const auto at = static_cast<std::size_t>(steps & (kQuarterSteps - 1));
  const bool odd = (steps & kQuarterSteps) != 0, back = (steps & (2 * kQuarterSteps)) != 0;
  const DoubleDouble one = kSines[at], other = kSines[kQuarterSteps - at];
  const DoubleDouble s = odd ? other : one, c = odd ? -one : other;
  const double r = rest.hi, z = r * r;
  const double sine_bend = r * z * (-1.0 / 6 + z * (1.0 / 120 - z * (1.0 / 5040)));
  const double cosine_bend = -(0.5 * z + r * rest.lo) + z * z * (1.0 / 24 - z * (1.0 / 720));
  const DoubleDouble along = two_product(c.hi, r);
  const DoubleDouble straight = two_sum(s.hi, along.hi);
  const double low = straight.lo + (s.lo + (along.lo + (c.hi * rest.lo + c.lo * r)));
  const DoubleDouble sine =
      fast_two_sum(straight.hi, low + (s.hi * cosine_bend + c.hi * sine_bend));
  return back ? -sine : sine;
}

Estimate estimate(DoubleDouble value, int steps) {
  return {value, kRelative * std::abs(value.hi) + kPerStep * std::abs(steps)};
}

/// Below this an angle, its sine and its tangent are the same double.
constexpr double kSmall = 0x1p-27;

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

}  // namespace

namespace quick {

Estimate sine(double radians) {
  const Steps a = in_steps(radians);
  return estimate(sine_of(a.steps, a.rest), a.steps);
}

Estimate cosine(double radians) {
  const Steps a = in_steps(radians);
  return estimate(sine_of(a.steps + kQuarterSteps, a.rest), a.steps);
}

Estimate tangent(double radians) {
  const Steps a = in_steps(radians);
  const Estimate s = estimate(sine_of(a.steps, a.rest), a.steps);
  const Estimate c = estimate(sine_of(a.steps + kQuarterSteps, a.rest), a.steps);
  const DoubleDouble ratio = quotient(s.value, c.value);
  return {ratio, 1.01 * (s.error + std::abs(ratio.hi) * c.error) / std::abs(c.value.hi)};
}

}  // namespace quick

double sin(double radians) {
  const double size = std::abs(radians);
  if (size < kSmall) return radians;
  if (size <= quick::kMostRadians)
    return nearest(quick::sine(radians), [&] { return slow::sine(radians); });
  return size < kInfinity ? slow::sine(radians) : kNoNumber;
}

double cos(double radians) {
  const double size = std::abs(radians);
  if (size < kSmall) return 1.0;
  if (size <= quick::kMostRadians)
    return nearest(quick::cosine(radians), [&] { return slow::cosine(radians); });
  return size < kInfinity ? slow::cosine(radians) : kNoNumber;
}

double tan(double radians) {
  const double size = std::abs(radians);
  if (size < kSmall) return radians;
  if (size <= quick::kMostRadians)
    return nearest(quick::tangent(radians), [&] { return slow::tangent(radians); });
  return size < kInfinity ? slow::tangent(radians) : kNoNumber;
}

}  // namespace swathe::maths
