#pragma once

#include <string>

#include "swathe/base.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// "FAIL", "pass": a verdict in a table, in color where the terminal has it.
std::string painted_verdict(Verdict verdict, const Terminal& terminal);

}  // namespace swathe::app
