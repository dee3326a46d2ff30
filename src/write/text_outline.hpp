#pragma once

#include <vector>

#include "swathe/draw.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The text as the outlines of its letters, where they stand on the page.
std::vector<type::Curve> outline_of(const TextMark& mark, const Font& font);

}  // namespace swathe
