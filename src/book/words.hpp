#pragma once

#include <string>
#include <string_view>

#include "swathe/make.hpp"

// Words that several chapters of the build book share.
namespace swathe {

/// "1 sheet", "3 sheets".
std::string counted_sheets(int number);
/// Pieces of padding: "1 noodle", "8 blocks".
std::string counted_padding(int number, const Job& job);
/// In percent, as it is printed: "62" of 0.62.
std::string percent(double share);
/// What an end does where it meets its neighbor: "left: runs past", "bumper B: open".
std::string end_words(EndCut::Kind kind, const std::string& neighbor);
/// The same, and how far off square it is cut: "left: stops, 22.5 deg".
std::string end_words(const EndCut& end, const std::string& neighbor);
/// Sets of covers: one a color.
int cover_sets(const Made& made);
/// "red, blue".
std::string color_words(const Made& made);
/// Names in a row.
std::string listed(const std::vector<std::string>& names, std::string_view between = ", ");

}  // namespace swathe
