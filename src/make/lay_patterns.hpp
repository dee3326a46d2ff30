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

/// The gaps between bumpers in their covers: cloth folded round both ends narrows them. Where two
/// bumpers meet at a corner, one's end stands against the other's back, and it is the most cloth
/// that lies between them anywhere.
std::vector<double> covered_gaps(const std::vector<double>& bare_gaps,
                                 const std::vector<Wrap>& wraps, const Section& section);

/// The seams that each cover is sewn from pieces by, clear of the numerals (as they stand on the
/// patterns).
Staged<std::vector<std::vector<ClothJoin>>> join_covers(const std::vector<Pattern>& patterns,
                                                        const Job& job,
                                                        const std::vector<PlacedNumeral>& numerals);

}  // namespace swathe
