#include "base/workshop.hpp"

#include <cmath>

namespace swathe {
namespace {

/// Less is rounding, not wood.
constexpr double kDust = 0.01;  // mm

Length step_of(Units units, double inch, double millimeters) {
  return units == Units::Inches ? inches(inch) : mm(millimeters);
}

}  // namespace

Length on_tape(Length length, Units units, Rounding rounding) {
  constexpr double kNearly = 1e-6;  // of a step: what arithmetic may have lost
  const Length step = step_of(units, 1.0 / 16, 1.0);
  const double steps = length / step;
  return step *
         (rounding == Rounding::Up ? std::ceil(steps - kNearly) : std::floor(steps + kNearly));
}

std::string sawn_with_unit(Length length, Units units) {
  const Length step = step_of(units, 1.0 / 16, 1.0);
  return dimension_with_unit(std::floor((length + mm(kDust)) / step) * step, units);
}

std::string sawn(Length length, Units units) {
  const std::string words = sawn_with_unit(length, units);
  return words.substr(0, words.rfind(' '));
}

std::string marked(Length length, Units units) {
  const Length step = step_of(units, 1.0 / 32, 0.5);
  const std::string words = exact(std::round(length / step) * step, units);
  return words.substr(0, words.rfind(' '));
}

}  // namespace swathe
