#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "base/maths.hpp"

namespace swathe {

/// Values a thing may take.
struct Range {
  double lo = 0, hi = 0;
};

/// base + swing cos(bearing - middle): what changes as one goes round a circle.
struct Swing {
  double base = 0, swing = 0, middle = 0;

  double cosine_at(double bearing) const { return maths::cos(bearing - middle); }

  /// What it may be between two bearings at most a turn apart, given the cosines at both.
  Range between(double from, double to, double cosine_from, double cosine_to) const {
    constexpr double kTurn = 2.0 * std::numbers::pi;
    Range c{std::min(cosine_from, cosine_to), std::max(cosine_from, cosine_to)};
    const auto passes = [&](double at) {  // whether a bearing a whole number of turns on is between
      return std::ceil((from - at) / kTurn) * kTurn + at <= to;
    };
    if (passes(middle)) c.hi = 1.0;
    if (passes(middle + std::numbers::pi)) c.lo = -1.0;
    return {base + swing * c.lo, base + swing * c.hi};
  }
};

/// Every bearing at which a continuous value passes zero; none that parts two others by less than
/// kFinest is promised.
///
/// Requires: may_pass(from, to, at_from, at_to) is true wherever the value passes zero between two
/// bearings; it narrows as they close in. It is given what look(bearing) gave at both: halves share
/// the looks at their ends.
/// Source: halving with exclusion by range, as in Moore, Interval Analysis (1966).
inline constexpr double kFinest = 1e-5;
inline constexpr double kBesideChord = 4e-15;
template <class Look, class MayPass, class ValueAt>
std::vector<double> zeros_round(Look look, MayPass may_pass, ValueAt value) {
  using Looked = decltype(look(0.0));
  std::vector<double> zeros;
  const auto search = [&](const auto& self, double from, double to, const Looked& at_from,
                          const Looked& at_to) -> void {
    if (!may_pass(from, to, at_from, at_to)) return;
    if (to - from > kFinest) {
      const double middle = 0.5 * (from + to);
      const Looked at_middle = look(middle);
      self(self, from, middle, at_from, at_middle);
      self(self, middle, to, at_middle, at_to);
      return;
    }
    double lo = from, hi = to;
    double at_lo = value(lo), at_hi = value(hi);
    const bool rises = at_hi > 0.0;
    if ((at_lo > 0.0) == rises) return;
    // Over so short a stretch the value is all but straight: it passes zero close to where the
    // chord does, mostly where the next chord does, and a look to either side of that leaves little
    // to halve.
    const auto chord = [&] { return lo + (hi - lo) * (at_lo / (at_lo - at_hi)); };
    if (const double near = chord(); near > lo && near < hi) {
      const double at_near = value(near);
      const bool past = (at_near > 0.0) == rises;
      (past ? hi : lo) = near;
      (past ? at_hi : at_lo) = at_near;
    }
    const double last = chord();
    for (const double near : {last - kBesideChord, last + kBesideChord})
      if (near > lo && near < hi) ((value(near) > 0.0) == rises ? hi : lo) = near;
    for (double middle = 0.5 * (lo + hi); middle > lo && middle < hi; middle = 0.5 * (lo + hi))
      ((value(middle) > 0.0) == rises ? hi : lo) = middle;
    zeros.push_back(0.5 * (lo + hi));
  };
  constexpr int kFirst = 16;
  const auto first = [](int k) { return 2.0 * std::numbers::pi * k / kFirst; };
  Looked at_from = look(first(0));
  for (int k = 0; k < kFirst; ++k) {
    const Looked at_to = look(first(k + 1));
    search(search, first(k), first(k + 1), at_from, at_to);
    at_from = at_to;
  }
  return zeros;
}

}  // namespace swathe
