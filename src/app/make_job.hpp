#pragma once

#include <string>

#include "commands.hpp"
#include "exit.hpp"
#include "interrupts.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// What is said once of all that was made.
inline constexpr const char* kPrintWords =
    "Print at 100 %, and measure the check scale on the first sheet.\n";

/// What a job is made among, where it is one of many.
struct Many {
  const HeldInterrupts& interrupts;
};

/// Makes one job's files into the folder, and says what they are and what to mind of them. Among
/// many the talk is headed by the job's name, and kPrintWords are left to the caller.
Exit make_job(Terminal& terminal, const std::string& job, const std::string& folder,
              const Making& making, const Many* among = nullptr);

}  // namespace swathe::app
