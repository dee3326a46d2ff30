#pragma once

#include <utility>
#include <vector>

#include "swathe/plane/point.hpp"

namespace swathe {

/// The unit way to an observer: bearing 0 straight ahead of the machine (y), counter-clockwise.
inline FlatPoint towards(double bearing) { return left_of(direction(bearing)); }
/// The bearing of a way, 0 to 2 pi.
double bearing_of(FlatPoint way);

/// A part of the full circle of bearings, in radians: what holds from some of them and not from
/// others.
///
/// Holds (bearings_test.cpp): (1) a bearing is in a & b, a | b, !a when the words say so;
///   (2) the measures of a set and of the rest add up to 2 pi.
class Bearings {
 public:
  static Bearings all() { return {true, {}}; }
  static Bearings none() { return {false, {}}; }
  /// From one bearing counter-clockwise to another; all the circle where that is 2 pi on or more.
  static Bearings arc(double from, double to);
  /// Where `holds` changes at these bearings and nowhere else.
  template <class Holds>
  static Bearings between(std::vector<double> changes, Holds holds);

  bool contains(double bearing) const;
  double measure() const;
  bool empty() const { return !before_zero_ && flips_.empty(); }
  bool whole() const { return before_zero_ && flips_.empty(); }
  /// Each stretch as from and to, the latter greater: one over bearing 0 ends past 2 pi.
  std::vector<std::pair<double, double>> arcs() const;
  /// Where the answer changes, rising.
  const std::vector<double>& flips() const { return flips_; }

  friend Bearings operator&(const Bearings& a, const Bearings& b) {
    return merged(a, b, [](bool p, bool q) { return p && q; });
  }
  friend Bearings operator|(const Bearings& a, const Bearings& b) {
    return merged(a, b, [](bool p, bool q) { return p || q; });
  }
  friend Bearings operator!(Bearings a) {
    a.before_zero_ = !a.before_zero_;
    return a;
  }

 private:
  Bearings(bool before_zero, std::vector<double> flips)
      : before_zero_(before_zero), flips_(std::move(flips)) {}
  static Bearings merged(const Bearings& a, const Bearings& b, bool (*both)(bool, bool));
  static std::vector<double> sorted_on_circle(std::vector<double> bearings);

  bool before_zero_;           ///< the answer just before 2 pi
  std::vector<double> flips_;  ///< in [0, 2 pi), rising, an even number of them
};

template <class Holds>
Bearings Bearings::between(std::vector<double> changes, Holds holds) {
  constexpr double kTurn = 6.283185307179586;
  changes = sorted_on_circle(std::move(changes));
  if (changes.empty()) return {holds(0.0), {}};
  const auto after = [&](std::size_t k) {
    const double next = k + 1 < changes.size() ? changes[k + 1] : changes.front() + kTurn;
    return holds(0.5 * (changes[k] + next));
  };
  bool now = after(changes.size() - 1);
  Bearings set{now, {}};
  for (std::size_t k = 0; k < changes.size(); ++k) {
    const bool then = after(k);
    if (then != now) set.flips_.push_back(changes[k]);
    now = then;
  }
  return set;
}

}  // namespace swathe
