#pragma once

#include <string>
#include <vector>

#include "swathe/make.hpp"

namespace swathe {

/// What an inspector looks at, and with what; our own advice is not among it.
struct InspectionRow {
  std::string rule;  ///< "R412"; with how sure it is, where that is not official
  std::string what, with, asks, expects;
  bool met = true;  ///< by the plan, as far as it tells
  Verdict verdict = Verdict::Pass;
};

/// A row for each finding under a rule of the season, in the order in which a bumper is gone over.
///
/// Holds (book_inspection_test.cpp): every such finding is on the card, once.
std::vector<InspectionRow> inspection_rows(const Made& made);

}  // namespace swathe
