#pragma once

#include <string>

#include "commands.hpp"
#include "exit.hpp"
#include "interrupts.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// Said once, after everything that was made, where sheets at full size are among it.
inline constexpr const char* kPrintWords =
    "Print at 100 %, the test page first, and measure its 100 mm scales.\n";

/// What a job needs to know when it is one of many.
struct Many {
  const HeldInterrupts& interrupts;
};

/// Writes one job's files into the folder or the archive, and says what they are and what to take
/// care of. For one of many jobs, its name stands above the messages, and the caller says
/// kPrintWords.
Exit make_job(Terminal& terminal, const std::string& job, const std::string& folder,
              const Making& making, const Many* among = nullptr);

}  // namespace swathe::app
