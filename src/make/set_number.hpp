#pragma once

#include <optional>
#include <vector>

#include "make/font.hpp"
#include "make/stand_bumpers.hpp"
#include "swathe/numeral.hpp"
#include "swathe/pattern.hpp"
#include "swathe/rules.hpp"
#include "swathe/sight.hpp"

namespace swathe {

/// The team's number on the covers in place, and what is read of it.
struct Numbered {
  std::optional<Numerals> numerals;              ///< where a font is open
  std::optional<Sight> sight;                    ///< the same
  std::vector<std::vector<ClearStretch>> clear;  ///< of each bumper
};

/// Requires: a standing without faults.
Outcome<Numbered> set_number_on(const Standing& stand, const Job& job,
                                const std::optional<Season>& season, const OpenFont& font,
                                const MakeOptions& options);

/// The numbers as they go on the patterns; none where the job has no number.
std::vector<PlacedNumeral> on_patterns(const std::optional<Numerals>& numerals,
                                       const ClothMap& map);

}  // namespace swathe
