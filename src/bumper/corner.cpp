#include <algorithm>

#include "base/maths.hpp"
#include "swathe/bumper.hpp"

namespace swathe {

double Corner::straight(double depth) const {
  return std::min(depth, sharp_to) * maths::tan(0.5 * turn);
}

double Corner::radius(double depth) const { return std::max(0.0, depth - sharp_to); }

double Corner::half_arc(double depth) const { return radius(depth) * (0.5 * turn); }

double Corner::surplus(double inner, double outer) const {
  const double sharp = std::min(outer, sharp_to) - std::min(inner, sharp_to);
  const double round = std::max(outer, sharp_to) - std::max(inner, sharp_to);
  return longer(sharp, round);
}

double Corner::longer(double sharp, double round) const {
  return sharp * maths::tan(0.5 * turn) + round * (0.5 * turn);
}

FlatPoint Corner::on_arc(double depth, double turned) const {
  const double r = radius(depth);
  return {straight(depth) + r * maths::sin(turned),
          std::min(depth, sharp_to) + r * maths::cos(turned)};
}

double Corner::crossing(double depth, double neighbor) const {
  return (neighbor - depth * maths::cos(turn)) / maths::sin(turn);
}

double Corner::square_end(double depth, bool laps) const {
  const double out = depth * maths::tan(0.5 * turn);
  return laps ? out : -std::max(0.0, out * maths::cos(turn));
}

}  // namespace swathe
