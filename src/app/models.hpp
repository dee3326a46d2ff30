#pragma once

#include <string>

#include "sheets.hpp"
#include "swathe/make/made.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// Models of all covers, added to the sheets; false where one fits no card, which has been said.
bool add_models(Terminal& terminal, const Made& made, Sheets& sheets, double scale);

/// Where models ask for larger card than the job's paper: at what scale they would not.
std::string smaller_model_text(const Made& made, const Sheets& sheets, double scale);

}  // namespace swathe::app
