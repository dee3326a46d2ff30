#pragma once

#include <vector>

#include "swathe/stock.hpp"

namespace swathe {

/// What each bumper of one set weighs, from volumes, counts and the job's densities and masses.
///
/// Ends cut at an angle are taken off: a piece is as long as its middle line. The strips that fill
/// hollows at corners are padding too, each a right triangle across.
std::vector<BumperWeight> weigh(const Job& job, const std::vector<bumper::Piece>& boards,
                                const std::vector<bumper::Piece>& padding,
                                const std::vector<Pattern>& patterns);

}  // namespace swathe
