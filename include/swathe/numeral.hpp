#pragma once

// The digits of a number at their size, as they are put on cloth.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/job.hpp"
#include "swathe/pattern.hpp"
#include "swathe/plane.hpp"
#include "swathe/type.hpp"

namespace swathe {

// The team's number, sized and placed. Millimeters; a digit's origin is on the base line at the
// left of its advance; x is s and y is u of the cover in place, but where a place is said to be on
// the pattern.

/// A bar of stencil sheet left standing across a stroke, so that an island stays in.
struct Bridge {
  FlatPoint from, to;  ///< middle line, from edge to edge of the stroke it crosses
  double width = 0;
  double length = 0;
  plane::Polygon bar;  ///< the whole bar, counter-clockwise; it runs on into the sheet at both ends
};

/// White that shows round a digit of another color: a larger digit that lies under it.
struct WhiteOutline {
  plane::Region outline;  ///< the digit's moved outwards; a counter too narrow for it, or for
                          ///< bridges, is white
  std::vector<Bridge> bridges;
  plane::Region stencil;  ///< what is cut out of its sheet
};

/// One of the digits the number uses.
struct Digit {
  char digit = '0';
  int count = 0;                 ///< to make: every place, every color, spares
  double height = 0, width = 0;  ///< of the ink
  double advance = 0;
  plane::Region outline;  ///< as it will stand on the cloth
  type::Stroke stroke{{}};
  type::Stroke stroke_after_bridges{{}};
  int counters = 0;  ///< islands
  std::vector<Bridge> bridges;
  plane::Region stencil;  ///< what is cut out of the sheet: the outline less its bridges
  std::optional<WhiteOutline> white;  ///< where the job asks for one
};

struct PlacedDigit {
  char digit = '0';
  FlatPoint origin;
};

/// The number in one place of one bumper's cover, or the part of it that stands there where it is
/// split over the gap between two bumpers. The parts of one showing of the number follow each other
/// from left to right.
struct PlacedNumeral {
  std::string text;  ///< the digits that stand here
  int showing = 0;   ///< counts how often the number is shown; the parts of a split one share it
  int place = 1;  ///< which [[numerals.place]], or side of numerals.sides, it stands for, from 1;
                  ///< where the program chose it, the how manieth it tried
  int from = 0;   ///< places before `text` in the number: 0 but for the later part of a split one
  bool whole = true;        ///< not split
  double space_across = 0;  ///< ink to ink, from the part before it over the gap; else 0
  int bumper = 0;           ///< number in the job
  std::string side;
  double center_s = 0, center_u = 0;
  double width = 0, height = 0;  ///< ink, along the cloth; height of the shortest digit
  double seen_height = 0;        ///< square on
  double tilt_deg = 0;           ///< greatest lean of the cloth under it
  double largest_space = 0;      ///< widest ink-to-ink space between neighboring digits
  double least_space = 0;        ///< narrowest; 0 where a single digit stands here
  std::vector<PlacedDigit> digits;
};

/// A side asked for on which the number does not fit.
struct NumeralMisfit {
  int bumper = 0;  ///< number in the job; -1 where no bumper covers the side
  std::string side;
  double needs = 0, has = 0;      ///< mm
  std::string advice;             ///< what would do: "Saira at wdth 60 is 11.3 in wide"
  int place = 1;                  ///< as PlacedNumeral's
  std::vector<KeyChange> mend{};  ///< of the advice, where it comes to a change of keys
};

struct Numerals {
  std::string number;  ///< the job's
  std::string font;
  std::map<std::string, double> axes;
  double size = 0;            ///< mm of the em
  double height = 0;          ///< of the shortest digit used
  std::string change;         ///< what make_legal did to it, in words; empty where nothing
  double width = 0;           ///< ink of the whole number
  std::vector<Digit> digits;  ///< in order of the digits
  double outline = 0;         ///< width of the white outline
  std::vector<PlacedNumeral> placed;
  std::vector<NumeralMisfit> misfits;

  /// Requires: a digit of the number.
  const Digit& shape(char digit) const;
  /// A digit's outline where it stands.
  plane::Region outline_of(const PlacedDigit& on) const;
  int showings() const { return placed.empty() ? 0 : placed.back().showing + 1; }
};

/// The same number with its place told on the pattern. Numerals go on before the cloth is pulled:
/// where they stand follows the pattern, their size does not.
PlacedNumeral on_pattern(PlacedNumeral numeral, const ClothMap& map);

/// Digits that were made for one job, which a caller keeps for the next: measuring strokes and
/// bridging take most of a pass.
struct KeptDigits {
  NumeralMethod method = NumeralMethod::Stencil;
  Length bridge, outline;
  std::vector<Digit> digits;
};

/// The kept digit that making this outline anew would come to, but for its count; none where the
/// outline, by a single bit, or what is made of it differs.
const Digit* kept_digit(const KeptDigits& kept, const DigitOutline& drawn, const NumeralKeys& keys);

}  // namespace swathe
