#pragma once

#include <vector>

#include "swathe/pattern.hpp"

// Corners whose padding is filled up to a square front. The pattern is drawn for them; the cover in
// place shows them round.
namespace swathe {

/// The section that the cloth goes round at a corner.
const Section& section_at(const Wrap& wrap, const RunCorner& corner);

/// Half the width that a corner's dart has on the pattern at u.
double dart_on_pattern(const Wrap& wrap, const RunCorner& corner, double u);

/// Rising places of s between which `taken_at_corners` is constant or changes linearly.
std::vector<double> bends_of_taken(const Wrap& wrap, const ClothKeys& cloth);

}  // namespace swathe
