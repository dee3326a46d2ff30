#pragma once

#include <string>

#include "swathe/make.hpp"

namespace swathe {

/// A finding's words as an inspector reads them: sizes as a ruler has them ("13/16 in" for "0.801
/// in", to the nearest 1/32), colors by name ("red" for "#b5121b").
std::string card_words(const std::string& words, const Job& job);

}  // namespace swathe
