#pragma once

#include <string>

#include "exit.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// Writes a text to a new file, or to standard output for "-", and says so; never overwrites.
/// `next` says what to do then.
Exit write_new(Terminal& terminal, const std::string& path, const std::string& text,
               const std::string& next);

}  // namespace swathe::app
