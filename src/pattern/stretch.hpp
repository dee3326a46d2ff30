#pragma once

#include "swathe/pattern/pattern.hpp"

namespace swathe {

/// Shrinks a pattern by the fractions the cloth will be pulled, along and round the bumper.
void take_out_stretch(Pattern& pattern, const ClothKeys& cloth);

}  // namespace swathe
