#pragma once

#include <string>
#include <vector>

#include "swathe/pattern.hpp"

namespace swathe {

/// The first half of a cover, up to the fold in its middle: what of the pattern lies there, cut at
/// the fold. Named things have the name of their mirror image too: "M1, M8".
struct HalfPattern {
  double fold = 0;                ///< s of the fold
  plane::Box box;                 ///< of the half
  std::vector<plane::Path> cuts;  ///< snips, and the outline from fold to fold
  std::vector<PleatLine> pleats;
  std::vector<HemFold> hems;
  std::vector<plane::Path> stitches, seam_marks, strips;
  std::vector<NamedLine> lines;
  std::vector<PatternCorner> corners;  ///< whole where they stand on the fold
  std::vector<BracketOnPattern> brackets;
  std::vector<Staple> staples;  ///< numbered as on the whole cover, so with gaps
  std::vector<MatchMark> marks;
  std::vector<std::string> mark_names;  ///< of each mark, with the name of its mirror image
  std::vector<EndOnPattern> ends;       ///< only the start's
};

/// s of the middle of a cover.
double fold_of(const Pattern& pattern);

/// Requires: the cover is its own mirror image, cut in one piece; a name for each of its marks.
HalfPattern first_half(const Pattern& whole, const std::vector<std::string>& mark_names);

}  // namespace swathe
