#pragma once

#include <string>

#include "swathe/make.hpp"
#include "swathe/sheet.hpp"

namespace swathe::app {

/// What to print for the covers: each way with its sheets and files, in a table.
std::string ways_text(const Made& made, const PrintWays& ways);

/// Why covers are not cut on a fold, a line each; empty where all are, or none has tiles.
std::string not_on_fold_text(const Made& made, const PrintWays& ways);

}  // namespace swathe::app
