#pragma once

#include <string>

#include "sheets.hpp"
#include "swathe/make/made.hpp"

namespace swathe::app {

/// What each way of laying out a cover costs in paper, side by side; why there is no half on the
/// fold where there is none.
std::string ways_text(const Made& made, const Sheets& sheets);

}  // namespace swathe::app
