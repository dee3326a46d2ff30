#pragma once

#include <optional>
#include <string>
#include <vector>

#include "place/place.hpp"

namespace swathe {

/// Cloth left free round a number's ink: its white outline, and kNumeralMargin beside that; mm.
double margin_of(const NumeralKeys& keys);
/// Length of side that a number of this ink width takes up, its margins included; mm.
double needed_for(double ink_width, const NumeralKeys& keys);
/// Half the height of the band that this ink takes up on the cloth, its white outline included; mm.
double half_band(double ink_height, const NumeralKeys& keys);

/// What would mend a thing, in words and, where it is one, as a change of the job's keys.
struct Advice {
  std::string words{};
  std::vector<KeyChange> mend{};
};

/// What to change so that the number fits on a side: the tallest height that is allowed, a font, or
/// where neither is enough both together; and the other sides on which it fits as it is. Looks at
/// one bumper's cloth on that side, or at every bumper's.
Advice advice_for_width(const PlaceInput& input, const std::string& side,
                        std::optional<int> bumper);

}  // namespace swathe
