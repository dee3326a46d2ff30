#pragma once

#include <vector>

#include "pattern/outline.hpp"

namespace swathe {

/// Windows and punch holes of the job's brackets on this bumper. Refuses: UnknownName,
/// DoesNotFit.
Outcome<std::vector<BracketOnPattern>> lay_brackets(const Wrap& wrap, const Job& job);

/// Equal spaces no larger than asked between keep-outs, numbered in driving order.
std::vector<Staple> lay_staples(const Wrap& wrap, const ClothKeys& cloth,
                                const std::vector<BracketOnPattern>& brackets,
                                const std::vector<BracketKeys>& keys);

/// Hook-and-loop along the finished edges of the flaps and across the tongues, clear of the same
/// keep-outs. All of it holds on the bare backs of the boards.
std::vector<plane::Path> lay_strips(const Wrap& wrap, const ClothKeys& cloth,
                                    const std::vector<BracketOnPattern>& brackets,
                                    const std::vector<BracketKeys>& keys);
/// How far the cloth's edge lies beyond the finished one: what is folded under.
double hem_of(const ClothKeys& cloth);
/// Where a hook-and-loop cover's hems are folded under: lines on both flaps.
std::vector<HemFold> hem_folds(const Wrap& wrap, const ClothKeys& cloth);

/// Numbered from left to right, not named for sides: congruent covers have the same names.
std::vector<MatchMark> lay_match_marks(const Wrap& wrap, const ClothKeys& cloth);

}  // namespace swathe
