#pragma once

#include <string>

#include "sheets.hpp"
#include "swathe/make/made.hpp"

namespace swathe::app {

/// How much paper each way of printing a cover takes, side by side; and if there is no half on the
/// fold, why not.
std::string ways_text(const Made& made, const Sheets& sheets);

}  // namespace swathe::app
