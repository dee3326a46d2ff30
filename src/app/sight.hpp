#pragma once

#include <string>

#include "swathe/make/made.hpp"

namespace swathe::app {

/// What is read from each of the job's circles, and what would mend it, for the terminal.
/// Requires: made.sight.
std::string sight_text(const Made& made);

}  // namespace swathe::app
