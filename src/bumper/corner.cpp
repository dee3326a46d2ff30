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

Corner::SquareEnd Corner::square_end(double thickness, double depth, bool laps) const {
  const double half = maths::tan(0.5 * turn), lean = maths::cos(turn);
  if (laps)
    return {depth * half,
            // The cut is square where the first of the board's edges reaches that face.
            std::min(crossing(0.0, thickness), crossing(thickness, thickness))};
  // The board ends where its outer edge meets the back of the neighbor's board; the padding where
  // its own outer edge meets the back of the neighbor's padding, if it does not end before.
  const double board = -std::max(0.0, thickness * half * lean);
  const double padding =
      std::min(thickness * maths::sin(turn) - depth * half * lean, thickness * half);
  return {padding, std::min(board, padding)};
}

}  // namespace swathe
