#pragma once

#include "swathe/pattern.hpp"

namespace swathe {

/// Takes a cover that lies as in place to its pattern. Radii of punched holes stay as they are.
void take_out_stretch(Pattern& pattern, const ClothMap& map);

}  // namespace swathe
