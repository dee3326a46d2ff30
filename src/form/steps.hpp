#pragma once

#include <cmath>

#include "swathe/base.hpp"

namespace swathe {

/// `value` moved by so many steps, from whole step to whole step: the first one goes to the next.
inline double stepped(double value, double step, int steps) {
  constexpr double kSame = 1e-6;  // of a step: a value so near to a whole one is it
  const double at = value / step;
  const double whole = steps > 0 ? std::floor(at + kSame) : std::ceil(at - kSame);
  return step * (whole + steps);
}

/// What a length is moved by at a time: what a tape measure shows.
inline Length step_of(Units units) { return units == Units::Inches ? inches(1.0 / 16) : mm(1); }

inline Length stepped_length(Length length, Units units, int steps) {
  const Length step = step_of(units);
  return stepped(length / step, 1, steps) * step;
}

}  // namespace swathe
