#pragma once

#include <vector>

#include "swathe/type/face.hpp"

namespace swathe {

/// The outline's contours with every curve broken into chords that stay within `tolerance` of it.
/// Contours of fewer than three points are left out.
Region flatten(const std::vector<Curve>& curves, double tolerance);

}  // namespace swathe
