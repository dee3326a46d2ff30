#pragma once

#include <string_view>
#include <vector>

#include "swathe/base/outcome.hpp"
#include "swathe/plane/path.hpp"
#include "swathe/type/font.hpp"

// Digits of a font at a size. Millimeters; a digit's origin is on the base line at the left of its
// advance.
namespace swathe {

/// Outlines are flattened within this of their curves, at their final size.
inline constexpr double kDigitFlatness = 0.01;

struct DigitOutline {
  char digit = '0';
  Region outline;
  Box ink;
  double advance = 0;

  int counters() const;  ///< islands: the holes of the outline
};

struct DigitSpacing {
  bool tabular = false;
  double extra = 0;  ///< added between neighbors
};

/// A number set in one line.
struct DigitLine {
  struct Place {
    char digit = '0';
    FlatPoint origin;
  };
  double em = 0;                     ///< its size
  std::vector<DigitOutline> shapes;  ///< each digit used, once, in order of the digits
  std::vector<Place> places;         ///< in order of the text
  Box ink;                           ///< of the whole line

  const DigitOutline& shape(char digit) const;  ///< Requires: the line has it.
};

/// A number with the font's kerning, at the size at which the shortest digit it uses is `height`
/// high: round digits are mostly taller than flat ones.
///
/// Refuses: OutOfRange (anything but digits 0 to 9, or more than 64 of them; a height that is not
///   positive, or past 10 m), BadFont (a digit the font lacks, has no ink for, has drawn of no
///   usable size or more intricate than the limits of base/limits.hpp allow).
Outcome<DigitLine> set_digits(const Font& font, std::string_view digits, double height,
                              DigitSpacing spacing = {});

}  // namespace swathe
