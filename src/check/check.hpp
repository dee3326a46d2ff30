#pragma once

#include <span>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/bumper.hpp"
#include "swathe/check.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"
#include "swathe/pattern.hpp"
#include "swathe/rules.hpp"
#include "swathe/sight.hpp"
#include "swathe/stock.hpp"

namespace swathe {

/// What is held against the rules. Spans named for bumpers run in the job's order.
struct CheckedSet {
  const Job& job;
  const Season* season;  ///< nullptr for "none"
  const Frame& frame;
  const Section& section;
  std::span<const Wrap> wraps;
  std::span<const Pattern> patterns;
  std::span<const double> bare_gaps;      ///< from each bumper to the next, mm
  std::span<const double> covered_gaps;   ///< the same less both ends' cloth
  std::span<const bumper::Piece> boards;  ///< of one set
  std::span<const bumper::Piece> padding;
  const Numerals* numerals = nullptr;  ///< nullptr where the job has no number
  const Stock* stock = nullptr;        ///< nullptr where it was not planned
  const Sight* sight = nullptr;        ///< nullptr where the job has no number
};

/// Every rule of the season held against what was made, and our own advice with an empty rule;
/// worst first, each kind in the order of the checks.
///
/// Holds: (1) a value that is unverified, or a guideline, never comes to Fail; an unverified one
///   never to Pass either; (2) what the model cannot know is Unknown, with what to look at; (3) the
///   grace of inspection turns Fail into Warn, never into Pass; (4) no season, no rule.
std::vector<Finding> check(const CheckedSet& subject);

/// The same, each with what of it can be measured on the finished bumpers.
std::vector<Measurable> check_to_measure(const CheckedSet& subject);

/// Contrast ratio of two colors, 1 to 21.
/// Source: W3C, Web Content Accessibility Guidelines 2.2, definitions of contrast ratio and
/// relative
///   luminance.
double contrast_ratio(const Color& a, const Color& b);

}  // namespace swathe
