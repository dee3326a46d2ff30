#pragma once

#include <string>

#include "swathe/base.hpp"

namespace swathe {

/// A weight in words, in pounds to a tenth or in kilograms to a hundredth: "11.6 lb", "5.26 kg".
std::string weight_words(double grams, Units units);

}  // namespace swathe
