#pragma once

#include <string>
#include <tl/expected.hpp>

#include "exit.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// Whether somebody is there who can be asked: standard input and standard error are a terminal,
/// and it is not to be quiet.
bool can_ask(const Terminal& terminal);

/// Asks the questions of a new job, each until its answer can be understood; the job's text. If
/// there is only an exit status, the terminal has been told that input ended.
tl::expected<std::string, Exit> ask_new_job(Terminal& terminal);

}  // namespace swathe::app
