#pragma once

#include <string>

#include "numeral/size.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"

namespace swathe {

/// Counters and other openings are kept at least this wide: a narrower one fills when it is cut,
/// painted or seen from afar. Common practice, no source.
inline constexpr Length kLeastOpening = mm(3);

/// The same number at the same height with its outlines moved outwards by `by` all round: strokes
/// grow by twice that, spaces between digits stay.
SetNumber heavier(const SetNumber& number, Length by, const NumeralSpacing& spacing);

/// A number whose strokes are as wide as a season asks, and what was done for it.
struct LegalNumber {
  SetNumber number;
  Length moved_out;    ///< by which its outlines were moved outwards; zero where they were not
  std::string change;  ///< in words; empty where the number was legal as it stood
};

/// The smallest change after which more than half of every digit's stroke, not counting what
/// bridges cover, is at least `stroke` wide: taller (to 1/16 in or 1 mm), or heavier at the same
/// height (to 0.1 mm), whichever is narrower on the cloth.
///
/// Refuses: DoesNotFit where neither twice the height nor outlines moved by half of `stroke` do.
/// Holds: (1) a legal number is not changed; (2) the result is legal, no shorter than it was, and
///   1/16 in less height, or 0.1 mm less outline, would not do; (3) no opening of a heavier digit
///   is narrower than kLeastOpening.
Outcome<LegalNumber> make_legal(const SetNumber& number, const NumeralKeys& keys, Length stroke,
                                Units units);

}  // namespace swathe
