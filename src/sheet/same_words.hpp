#pragma once

#include <cstddef>
#include <string>

#include "swathe/build/made.hpp"

namespace swathe {

/// "Same as bumper A: print A once and cut 2 more"; empty where no earlier bumper is the same.
std::string same_words(const Made& made, std::size_t bumper);

}  // namespace swathe
