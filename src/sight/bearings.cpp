#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/maths.hpp"
#include "swathe/sight.hpp"

namespace swathe {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;

double on_circle(double bearing) {
  const double once = std::fmod(bearing, kTurn);
  const double positive = once < 0.0 ? once + kTurn : once;
  return positive < kTurn ? positive : 0.0;
}

}  // namespace

double bearing_of(FlatPoint way) { return on_circle(maths::atan2(-way.x, way.y)); }

std::vector<double> Bearings::sorted_on_circle(std::vector<double> bearings) {
  for (double& bearing : bearings) bearing = on_circle(bearing);
  std::ranges::sort(bearings);
  bearings.erase(std::unique(bearings.begin(), bearings.end()), bearings.end());
  return bearings;
}

Bearings Bearings::arc(double from, double to) {
  if (to - from >= kTurn) return all();
  if (to <= from) return none();
  const double a = on_circle(from), b = on_circle(to);
  if (a == b) return none();
  return a < b ? Bearings(false, {a, b}) : Bearings(true, {b, a});
}

Bearings Bearings::merged(const Bearings& a, const Bearings& b, bool (*both)(bool, bool)) {
  bool in_a = a.before_zero_, in_b = b.before_zero_;
  bool now = both(in_a, in_b);
  Bearings set{now, {}};
  std::size_t i = 0, j = 0;
  while (i < a.flips_.size() || j < b.flips_.size()) {
    const double next_a = i < a.flips_.size() ? a.flips_[i] : kTurn;
    const double next_b = j < b.flips_.size() ? b.flips_[j] : kTurn;
    const double at = std::min(next_a, next_b);
    if (next_a == at) {
      in_a = !in_a;
      ++i;
    }
    if (next_b == at) {
      in_b = !in_b;
      ++j;
    }
    const bool then = both(in_a, in_b);
    if (then != now) set.flips_.push_back(at);
    now = then;
  }
  return set;
}

bool Bearings::contains(double bearing) const {
  const double at = on_circle(bearing);
  const auto passed = std::ranges::upper_bound(flips_, at) - flips_.begin();
  return before_zero_ != (passed % 2 == 1);
}

std::vector<std::pair<double, double>> Bearings::arcs() const {
  if (flips_.empty())
    return before_zero_ ? std::vector<std::pair<double, double>>{{0.0, kTurn}}
                        : std::vector<std::pair<double, double>>{};
  std::vector<std::pair<double, double>> list;
  for (std::size_t k = before_zero_ ? 1 : 0; k < flips_.size(); k += 2) {
    const double to = k + 1 < flips_.size() ? flips_[k + 1] : flips_.front() + kTurn;
    list.emplace_back(flips_[k], to);
  }
  return list;
}

double Bearings::measure() const {
  double sum = 0.0;
  for (const auto& [from, to] : arcs()) sum += to - from;
  return sum;
}

}  // namespace swathe
