#pragma once

#include <string>
#include <vector>

#include "swathe/pattern.hpp"

namespace swathe {

/// What of a pattern is not its own mirror image, left for right: "outline", "windows", "punch
/// holes", "brackets", "pleats", "match marks"; empty where all is. Numerals and seams are not
/// looked at.
std::vector<std::string> unlike_mirrored(const Pattern& pattern);

}  // namespace swathe
