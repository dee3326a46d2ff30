#pragma once

#include <cstddef>
#include <vector>

#include "swathe/type.hpp"

namespace swathe {

/// The outline's contours with every curve broken into chords that stay within `tolerance` of it.
/// Contours of fewer than three points are left out.
plane::Region flatten(const std::vector<type::Curve>& curves, double tolerance);

/// How many points that takes, none of them made; contours that are left out count too.
std::size_t count_flattened(const std::vector<type::Curve>& curves, double tolerance);

}  // namespace swathe
