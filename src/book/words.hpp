#pragma once

#include <string>
#include <string_view>

#include "swathe/make/made.hpp"

// Words that several chapters of the build book share.
namespace swathe {

/// "1 sheet", "3 sheets".
std::string counted(int number, std::string_view what);
/// "62 %".
std::string share_words(double share);
/// "laps", "butts 22.5 deg": how an end is cut, off square.
std::string end_words(const EndCut& end);
/// "round noodles, 2 1/2 in across".
std::string padding_words(const Job& job);
/// "noodle" or "block".
std::string_view padding_noun(const Job& job);
/// Sets of covers: one a color.
int cover_sets(const Made& made);
/// "red, blue".
std::string color_words(const Made& made);
/// Names in a row.
std::string listed(const std::vector<std::string>& names, std::string_view between = ", ");

}  // namespace swathe
