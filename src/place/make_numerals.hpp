#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "place/place.hpp"
#include "swathe/base.hpp"
#include "swathe/bumper.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// What the season asks of a number; unset where it asks nothing.
struct NumeralRules {
  std::optional<Length> height;  ///< at least
  std::optional<Length> stroke;  ///< at least, for the majority of the stroke
  int places = 0;                ///< round the machine, at least; 0 where it counts none
  bool may_split = false;        ///< over the gap between two bumpers
  std::optional<Length> space;   ///< between digits, ink to ink, at most
};

struct NumeralInput {
  const Font& font;
  std::string font_name;  ///< as the job names it
  std::string number;     ///< one to five digits
  const NumeralKeys& keys;
  const std::vector<Wrap>& wraps;  ///< of every bumper, in the job's order
  NumeralRules rules;
  int colors = 1;  ///< of cloth: sets of covers to make
  const std::vector<FontCandidate>& candidates;
  Units units = Units::Inches;
  const Places& places;              ///< of the job's keys
  const SightKeys& sight;            ///< who looks at the places that the program chooses,
  const Demand& demand;              ///< and what the season asks that they can read
  const KeptDigits* kept = nullptr;  ///< of an earlier job; those that fit are not made anew
};

/// How high the shortest digit is to be: as the job says, else the season's least and 1/8 in more
/// (a cut is never exact; common practice, no source), else 4 in.
Length numeral_height(const NumeralKeys& keys, const NumeralRules& rules);

/// The number measured, made fit to be cut by the job's method, and placed.
///
/// A digit's count is its share of one number, times a number for each place and spare, times the
/// colors.
/// Refuses: at "job.number" OutOfRange; at "numerals.font" BadFont; at "numerals.height"
///   OutOfRange; at "numerals.spacing" DoesNotFit; at "numerals.bridge" DoesNotFit or OutOfRange;
///   at "numerals.make_legal" DoesNotFit;
///   at "numerals.outline" DoesNotFit where neighbors' white outlines meet; and what
///   place_number() refuses.
Outcome<Numerals> make_numerals(const NumeralInput& input);

}  // namespace swathe
