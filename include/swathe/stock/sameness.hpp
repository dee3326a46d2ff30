#pragma once

#include <optional>
#include <string>
#include <utility>
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
  /// Each side of the other cover, in its order, and the side of this one that lies on it.
  std::vector<std::pair<std::string, std::string>> sides;
};

/// For each pattern (and its seams; none at all where every cover is one piece) the first earlier
/// one with a congruent outline; nothing where there is none.
///
/// Of several ways that fit, one without differences is taken first, then Same, Turned, Mirrored.
/// Outlines are the same within 0.05 mm, less than a blade's width.
std::vector<std::optional<Sameness>> same_patterns(const std::vector<Pattern>& patterns,
                                                   const std::vector<std::vector<ClothJoin>>& joins,
                                                   const std::vector<PlacedNumeral>& numerals);

/// The names of each cover's match marks, in their order: its own, or those they have on the print
/// it is cut from.
///
/// The pencil marks of its boards then bear what is chalked on its cloth, whichever print that came
/// from, however it was laid.
std::vector<std::vector<std::string>> shared_mark_names(
    const std::vector<Pattern>& patterns, const std::vector<std::optional<Sameness>>& same);

}  // namespace swathe
