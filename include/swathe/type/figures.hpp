#pragma once

#include <string>
#include <vector>

#include "swathe/base/outcome.hpp"
#include "swathe/plane/path.hpp"
#include "swathe/type/face.hpp"

// How the digits of a face measure, to choose one by. Millimetres.
namespace swathe {

/// One digit of a face.
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

/// A face with all ten digits, the shortest of them `height` high.
struct FaceFigures {
  double height = 0;
  double stroke_asked = 0;
  std::vector<DigitFigures> digits;  ///< 0 to 9
  double five_widest = 0;            ///< ink of the widest digit five times, unkerned
  double five_average = 0;           ///< of five digits of mean width
  /// Neighbours with the least space between their ink, across, and that space.
  DigitPair closest;
  /// Pairs that are taken for each other, most alike first: laid on each other, middle on middle,
  /// the area of both in common over the area of either.
  std::vector<DigitPair> alike;

  double share_at_least() const;         ///< of the stroke's length of all ten
  const DigitFigures& thinnest() const;  ///< the digit with the least stroke
};

/// Refuses: OutOfRange (a height that is not positive), BadFont (a digit is missing).
Outcome<FaceFigures> measure_face(const Face& face, double height, double stroke_asked);

/// What the strokes come to: "wide enough throughout", "wide enough for the most part; thinner in
/// places: 5, 6, 9", "too thin for the most part: 1, 4" with the digits it holds for.
std::string verdict(const FaceFigures& figures);

}  // namespace swathe
