#pragma once

#include <string>

#include "swathe/make.hpp"

namespace swathe::app {

/// From where the number can be read on each of the job's circles, and what to change.
/// Requires: made.sight.
std::string sight_text(const Made& made);

}  // namespace swathe::app
