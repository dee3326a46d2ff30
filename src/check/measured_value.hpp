#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/check.hpp"

// What was measured of one row: as it is read, as it is told, and what it comes to.
namespace swathe {

/// In the unit of its row's Limit: mm, grams, a count; 1 or 0 for what is so or is not. Two of a
/// row that asks for two heights, the lower first.
using MeasuredValue = std::vector<double>;

/// "a length like \"5 in\" or \"127 mm\"": what is to be written for it.
std::string_view expected_of(Limit::Of of);

/// Nothing where the text is no such value. A bare length is in `units`.
std::optional<double> read_measured_one(Limit::Of of, std::string_view text, Units units);

/// "4 7/8 in", "2 1/2 in to 7 1/2 in", "yes".
std::string measured_words(Limit::Of of, const MeasuredValue& value, Units units);

/// What a measured value comes to under its rule.
struct Judged {
  Verdict verdict = Verdict::Unknown;
  std::string advice;  ///< empty where it passes
};
Judged judge_measured(const CardRow& row, const MeasuredValue& value, Units units);

}  // namespace swathe
