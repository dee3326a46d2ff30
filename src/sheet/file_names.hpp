#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "swathe/make.hpp"

namespace swathe {

/// A name made safe for files everywhere: letters, digits, "-" and "_" stay, the rest becomes "_";
/// at most 64 letters.
std::string file_safe(std::string_view name);

/// "A-pattern": the bumper's name made safe; its number follows where two bumpers' names become
/// one.
std::string stem_of(const Made& made, std::size_t bumper, std::string_view what);

}  // namespace swathe
