#pragma once

#include <optional>
#include <string>
#include <vector>

#include "swathe/numeral/numerals.hpp"
#include "swathe/pattern/pattern.hpp"

namespace swathe {

/// How one pattern is another's: print once and cut more.
struct Sameness {
  enum class How {
    Same,      ///< lay it as it is
    Turned,    ///< half a turn: turn it, do not flip it
    Mirrored,  ///< flip it left for right
  };
  int other = 0;  ///< an earlier bumper of the job
  How how = How::Same;
  std::vector<std::string>
      but_for;  ///< what differs within the same outline: "windows", "numerals"
};

/// For each pattern the first earlier one with a congruent outline; nothing where there is none.
///
/// Of several ways that fit, one without differences is taken first, then Same, Turned, Mirrored.
/// Outlines are the same within 0.05 mm, less than a blade's width.
std::vector<std::optional<Sameness>> same_patterns(const std::vector<Pattern>& patterns,
                                                   const std::vector<PlacedNumeral>& numerals);

}  // namespace swathe
