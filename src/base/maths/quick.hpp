#pragma once

#include <optional>

#include "base/maths/double_double.hpp"

// The first of two ways to each function: fast, and good for all but one argument in a thousand or
// more, whose value lies so near the middle between two doubles that `error` leaves both open.
// Source: A. Ziv, "Fast evaluation of elementary mathematical functions with correctly rounded last
//   bit", ACM TOMS 17 (1991) (from memory). The tests hold each error against MPFR.
namespace swathe::maths {

struct Estimate {
  DoubleDouble value;
  double error = 0;  ///< bound of how far off it is

  /// The double nearest to what is estimated, where the error leaves only one.
  std::optional<double> rounded() const {
    const double least = value.hi + (value.lo - error), most = value.hi + (value.lo + error);
    return least == most ? std::optional(least) : std::nullopt;
  }
};

/// The quick way where it decides, else the slow one.
template <class Slow>
double nearest(const Estimate& estimate, Slow slow) {
  if (const auto rounded = estimate.rounded()) return *rounded;
  return slow();
}

namespace quick {

inline constexpr double kMostRadians = 1024;  ///< of sine, cosine, tangent

Estimate sine(double radians);
Estimate cosine(double radians);
Estimate tangent(double radians);

/// Of the way from the origin to (x, y), from -pi to pi.
/// Requires: sizes from 2^-300 to 2^300, none 2^150 times the other.
Estimate angle(double y, double x);

/// Requires: at most 1 in size, not 1 itself and not below 2^-100.
Estimate arc_cosine(double cosine);

/// Requires: sizes from 2^-400 to 2^400.
Estimate hypotenuse(double x, double y);

/// Requires: base from 2^-40 to 2^40, over from 1 to 16, under from 1 to 6.
Estimate power(double base, int over, int under);

}  // namespace quick

/// a^(1 / degree) within a few units in the last place, where a is from 2^-degree to 1.
double plain_root(double a, int degree);

}  // namespace swathe::maths
