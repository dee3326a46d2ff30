#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace swathe {

/// Values a thing may take.
struct Range {
  double lo = 0, hi = 0;
};

/// Of base + swing cos(bearing - middle) between two bearings at most a turn apart.
inline Range cosine_range(double base, double swing, double middle, double from, double to) {
  constexpr double kTurn = 2.0 * std::numbers::pi;
  const double a = std::cos(from - middle), b = std::cos(to - middle);
  Range c{std::min(a, b), std::max(a, b)};
  const auto passes = [&](double at) {  // whether a bearing a whole number of turns on is between
    return std::ceil((from - at) / kTurn) * kTurn + at <= to;
  };
  if (passes(middle)) c.hi = 1.0;
  if (passes(middle + std::numbers::pi)) c.lo = -1.0;
  return {base + swing * c.lo, base + swing * c.hi};
}

/// Every bearing at which a continuous value passes zero; none that parts two others by less than
/// kFinest is promised.
///
/// Requires: range(from, to) holds every value(b) between; it narrows as they close in.
/// Source: halving with exclusion by range, as in Moore, Interval Analysis (1966).
inline constexpr double kFinest = 1e-8;
template <class ValueAt, class RangeOf>
std::vector<double> zeros_round(ValueAt value, RangeOf range) {
  std::vector<double> zeros;
  const auto search = [&](const auto& self, double from, double to) -> void {
    const Range r = range(from, to);
    if (r.lo > 0.0 || r.hi < 0.0) return;
    if (to - from > kFinest) {
      const double middle = 0.5 * (from + to);
      self(self, from, middle);
      self(self, middle, to);
      return;
    }
    double lo = from, hi = to;
    const bool rises = value(hi) > 0.0;
    if ((value(lo) > 0.0) == rises) return;
    for (int k = 0; k < 40; ++k) {
      const double middle = 0.5 * (lo + hi);
      ((value(middle) > 0.0) == rises ? hi : lo) = middle;
    }
    zeros.push_back(0.5 * (lo + hi));
  };
  constexpr int kFirst = 16;
  for (int k = 0; k < kFirst; ++k)
    search(search, 2.0 * std::numbers::pi * k / kFirst, 2.0 * std::numbers::pi * (k + 1) / kFirst);
  return zeros;
}

}  // namespace swathe
