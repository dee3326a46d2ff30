#pragma once

#include <string>
#include <vector>

#include "swathe/numeral/numerals.hpp"
#include "swathe/pattern/pattern.hpp"

namespace swathe {

/// What of a cover is not its own mirror image about its middle: "outline", "windows", "numerals";
/// empty where half of it can be laid on a fold of the cloth. Of a numeral the place counts, since
/// no digit need have a mirror image.
std::vector<std::string> unlike_halves(const Pattern& pattern,
                                       const std::vector<PlacedNumeral>& numerals, int bumper);

/// The first half of a cover, up to the fold in its middle. What has a name bears that of its
/// mirror image too: "M1, M8".
struct HalfPattern {
  Pattern pattern;  ///< without outline: its part is one of the snips; staples keep no order
  double fold = 0;  ///< s of the fold
  Box box;          ///< of the half
};

/// Requires: the cover is its own mirror image.
HalfPattern first_half(const Pattern& whole);

}  // namespace swathe
