#include <algorithm>
#include <cmath>

#include "base/maths.hpp"
#include "swathe/sight.hpp"

namespace swathe {

Angle visual_angle(Length size, Length distance) {
  return Angle::from_radians(2.0 * maths::atan2(0.5 * size.mm(), distance.mm()));
}

Length distance_of(Length size, Angle angle) {
  return mm(0.5 * size.mm() / maths::tan(0.5 * angle.radians()));
}

double oblique_factor(Angle off_square) {
  return std::sqrt(std::max(0.0, maths::cos(off_square.radians())));
}

}  // namespace swathe
