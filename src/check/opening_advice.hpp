#pragma once

#include <optional>
#include <string>
#include <vector>

#include "check/findings.hpp"

namespace swathe {

/// An opening of the job, beside which a season asks for so much bumper.
struct OpeningBeside {
  std::size_t number = 0;  ///< in the job, from 0
  int side = 0;
  double covered = 0;     ///< frame covered beside the nearer corner, mm, to where the bumper ends
  double most_here = 0;   ///< width that leaves the least on both sides, its center as it is
  double most_ever = 0;   ///< the same with its center in the middle of the side
  bool centered = false;  ///< it stands there already
};

/// The opening of a side, held against the least beside it; nothing where the side has none.
std::optional<OpeningBeside> opening_beside(const CheckedSet& s, int side, double least);

/// "set opening.1.width to at most ...", with the values to write.
struct OpeningAdvice {
  std::string words;
  std::vector<KeyChange> mend;
};
OpeningAdvice narrower(const OpeningBeside& opening, const Findings& findings);

}  // namespace swathe
