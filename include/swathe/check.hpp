#pragma once

// What the checks ask; the inspector's card, and what was measured on finished bumpers.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/rules.hpp"

namespace swathe {

/// What a check means, in words.
struct CheckWords {
  std::string id;    ///< Finding::id
  std::string asks;  ///< what is so where it passes, without a full stop
  std::string why;   ///< a sentence
};

/// Every check there is, in the order in which they are made.
std::vector<CheckWords> check_words();

/// What a rule asks of a finished bumper, as something that can be measured on it.
struct Limit {
  enum class Of {
    Seen,    ///< no measure: it is so, or it is not
    Length,  ///< mm, from `least` to `most`
    Mass,    ///< grams, from `least` to `most`
    Count,   ///< from `least` to `most`
    Fills,   ///< two heights, mm: from `least` or lower up to `most` or higher
    Within,  ///< two heights, mm: both from `least` to `most`
  };
  Of of = Of::Seen;
  std::optional<double> least{}, most{};
  bool below_most = false;         ///< `most` itself is too much
  double grace = 0;                ///< mm by which an inspector may let it miss that
  Verdict missed = Verdict::Fail;  ///< what it comes to where it is missed by more
};

/// A finding, and what of it can be measured.
struct Measurable {
  Finding finding;
  Limit limit;
};

/// A line of the inspector's card: what is looked at, and with what. Our own advice is not among
/// it.
struct CardRow {
  std::string rule;  ///< "R412"; with how sure it is, where that is not official
  std::string what;  ///< "padding depth: padding in front of the boards"
  std::string with;  ///< "ruler", "by eye"
  Finding finding;   ///< what the rule asks, and what the plan gives
  Limit limit;

  /// By the plan, as far as it tells.
  bool met() const {
    return finding.verdict == Verdict::Pass || finding.verdict == Verdict::Unknown;
  }
};

/// A row for each finding under a rule of the season, in the order in which a bumper is gone over.
///
/// Holds (inspection_test.cpp): every such finding is on the card, once.
std::vector<CardRow> card_rows(const std::vector<Measurable>& findings, const Season& season);
/// The same rows where nothing is to be measured: without their limits.
std::vector<CardRow> card_rows(const std::vector<Finding>& findings, const Season& season);

/// The card as a file to fill in, a table for each row: what `swathe new --measured` writes.
///
/// Holds (measured_test.cpp): check_measured() reads it without a fault, all its rows empty.
std::string measured_text(const std::vector<CardRow>& rows, const Season& season, Units units);

/// A row of the card with what was measured on the finished bumper.
struct MeasuredRow {
  CardRow row;
  std::string measured;                ///< in words, as a tape measure shows it; empty: not yet
  Verdict verdict = Verdict::Unknown;  ///< of what was measured
  std::string advice;                  ///< empty where it passes
};

/// Reads such a file, filled in, and holds it against the rules; in the order of the card, with the
/// rows that the file leaves out. What is not measured is no fault. Lengths may be in any unit;
/// bare numbers are in `units`, as are the words.
///
/// Holds: (1) of check(), for what was measured; (2) the grace of inspection turns Fail into Warn,
///   never into Pass
/// Refuses, every fault at its place: what parse_toml refuses, alone; UnknownKey; WrongType;
///   UnknownName (a row that the card does not have, or a row twice); Missing; Malformed and
///   OutOfRange (what was measured).
Outcome<std::vector<MeasuredRow>> check_measured(const std::vector<CardRow>& rows,
                                                 std::string_view text, const std::string& file,
                                                 Units units);

}  // namespace swathe
