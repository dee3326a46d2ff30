#pragma once

#include <string_view>

namespace swathe::app {

/// How a run ends, as scripts see it.
enum class Exit {
  Done = 0,           ///< for check: and every rule is met
  RuleNotMet = 1,     ///< done, but a rule is not met
  WrongInput = 2,     ///< the command line, the job or a file it names is wrong
  MachineFailed = 3,  ///< disk full, folder not writable, a bundled font damaged
};

/// Each of them in words, by its number.
inline constexpr std::string_view kExitWords[] = {
    "done", "a rule is not met (check)", "the job or the command line is wrong",
    "the machine failed (disk full, folder not writable, out of memory)"};

inline constexpr std::string_view kExitOfMany =
    "Of many jobs none stops the others: 2 where any is wrong, 3 where the machine failed for any.";

}  // namespace swathe::app
