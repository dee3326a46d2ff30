#include "base/maths/quick.hpp"
#include "base/maths/slow.hpp"
#include "base/maths/slow_turn.hpp"

namespace swathe::maths::slow {
namespace {

/// Of the way from the origin to (x, y), from an angle that is off by 2^-52 of it at most.
///
/// With d the tangent of what it is off by, that is d - d^3 / 3 and no more in 256 bits.
Wide angle_near(double start, const Wide& y, const Wide& x) {
  const SineCosine a = sine_cosine(start);
  const Wide across = y * a.cosine - x * a.sine, along = x * a.cosine + y * a.sine;
  const Wide d = across * inverse_root(along, 1);
  return Wide(start) + d - d * d * d / 3;
}

}  // namespace

double angle(double y, double x) {
  return angle_near(quick::angle(y, x).value.hi, Wide(y), Wide(x)).rounded();
}

double just_below_quotient(double y, double x) {
  const Wide ratio = (Wide(y) * inverse_root(Wide(x), 1)).snapped();
  return (ratio - ratio.scaled(-250)).rounded();
}

double arc_cosine(double cosine) {
  const Wide x(cosine);
  const Wide y = root(Wide(1.0) - x * x, 2);
  return angle_near(quick::arc_cosine(cosine).value.hi, y, x).rounded();
}

}  // namespace swathe::maths::slow
