#pragma once

#include <string>

#include "sheets.hpp"
#include "swathe/make/made.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// Adds models of all covers to the sheets; false if one fits no card: the terminal has been told.
bool add_models(Terminal& terminal, const Made& made, Sheets& sheets, double scale);

/// If models need larger card than the job's paper: at which scale they do not.
std::string smaller_model_text(const Made& made, const Sheets& sheets, double scale);

}  // namespace swathe::app
