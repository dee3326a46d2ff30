#pragma once

#include <string>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"
#include "swathe/plane.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The job's number set in one line, at its size; millimeters.
struct SetNumber {
  std::string text;
  double em = 0;
  double height = 0;                 ///< of the shortest digit used
  plane::Box ink;                    ///< of the whole line
  double largest_space = 0;          ///< widest ink-to-ink space between neighboring digits
  double least_space = 0;            ///< narrowest; 0 for a single digit
  std::vector<DigitOutline> shapes;  ///< each digit used, once, in order of the digits
  std::vector<PlacedDigit> digits;   ///< in order of the text

  const DigitOutline& shape(char digit) const;  ///< Requires: the text has it.
};

/// Sets a number so that the shortest digit it uses is `height` high.
///
/// Refuses: OutOfRange (not one to five Arabic digits; a height that is not positive), BadFont (a
///   digit is missing from the font, or of no usable size), DoesNotFit (digits that overlap).
/// Holds: (1) no digit is shorter than `height`; (2) twice the height gives twice of everything,
///   but for an extra space that is asked for.
Outcome<SetNumber> set_number(const Font& font, const std::string& number, Length height,
                              const NumeralSpacing& spacing);

/// The same number set to another height. Holds: equal to setting it anew.
SetNumber at_height(const SetNumber& number, Length height, const NumeralSpacing& spacing);

/// Measures the line's ink and spaces anew, and its height, after its digits were changed.
void measure_line(SetNumber& number);

/// A font measured for this number, to be offered where the chosen one is too wide.
struct FontCandidate {
  std::string font;  ///< "Saira at wdth 60, wght 900"
  SetNumber number;  ///< at some height: at_height() gives any other
};

/// Sets the number in another font. Refuses: as set_number().
Outcome<FontCandidate> font_candidate(std::string name, const Font& font, const std::string& number,
                                      const NumeralSpacing& spacing);

}  // namespace swathe
