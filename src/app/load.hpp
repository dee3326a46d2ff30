#pragma once

#include <string>
#include <tl/expected.hpp>

#include "exit.hpp"
#include "swathe/make.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// Reads a job ("-": standard input) and makes it. If there is only an exit status, the terminal
/// has been told what is wrong.
tl::expected<Made, Exit> load(Terminal& terminal, const std::string& job);

/// What to call a job in a sentence: its title, or its file's name where it has none. Printable.
std::string job_words(const Job& job);

}  // namespace swathe::app
