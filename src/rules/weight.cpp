#include "rules/weight.hpp"

#include "swathe/rules.hpp"

namespace swathe {

std::string weight_words(double grams, Units units) {
  return units == Units::Inches ? plain_number(rules::Mass{grams}.pounds(), 1) + " lb"
                                : plain_number(grams / 1000.0, 2) + " kg";
}

}  // namespace swathe
