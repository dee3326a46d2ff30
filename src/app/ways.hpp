#pragma once

#include <string>
#include <vector>

#include "swathe/make/made.hpp"
#include "swathe/write/sheets.hpp"

namespace swathe::app {

/// What each way of laying out a cover costs in paper, side by side; why there is no half on the
/// fold where there is none.
std::string ways_text(const Made& made, const std::vector<ToldSheet>& sheets);

}  // namespace swathe::app
