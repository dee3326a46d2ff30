#pragma once

#include <optional>
#include <vector>

#include "make/faults.hpp"
#include "swathe/bumper.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"
#include "swathe/pattern.hpp"

namespace swathe {

/// The covers laid flat, each in one piece, those that can be.
Staged<std::vector<Pattern>> lay_patterns(const JobReading& reading,
                                          const std::vector<Wrap>& wraps);

/// The gaps between bumpers in their covers: cloth folded round both ends narrows them.
std::vector<double> covered_gaps(const std::vector<double>& bare_gaps,
                                 const std::vector<Pattern>& patterns, const Section& section);

/// The seams that each cover is sewn from pieces by, clear of the numerals (as they stand on the
/// patterns).
Staged<std::vector<std::vector<ClothJoin>>> join_covers(const std::vector<Pattern>& patterns,
                                                        const Job& job,
                                                        const std::vector<PlacedNumeral>& numerals);

}  // namespace swathe
