#pragma once

#include <string>
#include <vector>

#include "swathe/base/outcome.hpp"
#include "swathe/plane/path.hpp"
#include "swathe/type/font.hpp"

// How the digits of a font measure, to choose one by. Millimeters.
namespace swathe {

/// One digit of a font.
struct DigitFigures {
  char digit = '0';
  double height = 0, width = 0;  ///< of the ink
  int counters = 0;              ///< islands
  double stroke_length = 0;
  double stroke_median = 0;
  double stroke_least = 0;
  FlatPoint stroke_least_at;
  double share_at_least = 0;  ///< of the stroke's length that is at least as wide as asked
};

/// Two digits and a figure that belongs to both.
struct DigitPair {
  char left = '0', right = '0';
  double value = 0;
};

/// A font with all ten digits, the shortest of them `height` high.
struct FontFigures {
  double height = 0;
  double stroke_asked = 0;
  std::vector<DigitFigures> digits;  ///< 0 to 9
  double five_widest = 0;            ///< ink of the widest digit five times, unkerned
  double five_average = 0;           ///< of five digits of mean width
  /// Neighbors with the least space between their ink, across, and that space.
  DigitPair closest;
  /// Pairs that are taken for each other, most alike first: laid on each other, middle on middle,
  /// the area of both in common over the area of either.
  std::vector<DigitPair> alike;

  double share_at_least() const;  ///< of the stroke's length of all ten
  DigitFigures thinnest() const;  ///< the digit with the least stroke; none: of no size
};

/// Refuses: OutOfRange (a height that is not positive), BadFont (a digit is missing).
Outcome<FontFigures> measure_font(const Font& font, double height, double stroke_asked);

/// What the strokes come to: "wide enough throughout", "wide enough for the most part; thinner in
/// places: 5, 6, 9", "too thin for the most part: 1, 4" with the digits it holds for.
std::string verdict(const FontFigures& figures);

}  // namespace swathe
