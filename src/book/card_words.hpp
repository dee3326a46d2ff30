#pragma once

#include <string>

#include "swathe/make.hpp"

namespace swathe {

/// A finding's words as an inspector reads them: colors by name ("red" for "#b5121b").
std::string card_words(const std::string& words, const Job& job);

}  // namespace swathe
