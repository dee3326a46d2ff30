#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "swathe/make.hpp"

namespace swathe {

/// "Same as bumper A: print A once and cut 2 more", or on the print that others are cut from "For
/// bumper A, use this print as it is. Cut again for bumper B: turn this paper over, left to right";
/// empty where the cover is like no other. A cover with a print of its own is never told to turn
/// paper.
std::string same_words(const Made& made, std::size_t bumper);

/// In what covers or halves differ, as a person says it: stock's own words are the report's.
std::vector<std::string> difference_words(const std::vector<std::string>& differences);

/// Whether the cover is an earlier one's in all that is cut and marked, so that one print does.
bool is_cut_from_another(const Made& made, std::size_t bumper);

}  // namespace swathe
