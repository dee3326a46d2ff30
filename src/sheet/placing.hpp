#pragma once

#include <string>
#include <vector>

#include "swathe/make.hpp"

// Where each digit goes, told from the number's own center line and base line.
namespace swathe {

/// A digit's ink along the base line: mm from the center line, to the right seen from outside.
struct DigitPlace {
  char digit = '0';
  double left = 0, right = 0;

  double middle() const { return 0.5 * (left + right); }
};

/// The number, or a part of it, and every place where it stands with the same digits so far apart.
struct Placing {
  std::string text;
  std::vector<DigitPlace> digits;
  /// Of all ink, white outlines too: from the center line, and from the base line down to its
  /// lowest.
  double left = 0, right = 0, low = 0;
  std::vector<PlacedNumeral> places;  ///< on the patterns
};

/// Holds (placing_test.cpp): (1) every placed number is among the places, once; (2) a digit's edges
///   are where its outline lies on the pattern.
std::vector<Placing> placings(const Made& made);

/// How high above the bottom edge of its cloth a number's base line lies.
double base_above_edge(const Made& made, const PlacedNumeral& on_pattern);
/// How far its center line lies from the cloth's left edge, the outside up.
double center_from_edge(const Made& made, const PlacedNumeral& on_pattern);

/// Whether all digits of a number are cut in one sheet, which has its center line on it.
bool is_one_sheet(const NumeralKeys& keys);

}  // namespace swathe
