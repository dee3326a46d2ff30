#pragma once

#include <string_view>

namespace swathe::app {

/// How a run ends, as scripts see it.
enum class Exit {
  Done = 0,           ///< for check: and every rule is met
  RuleNotMet = 1,     ///< done, but a rule is not met (check, make --strict)
  WrongInput = 2,     ///< the command line, the job or a file it names is wrong
  MachineFailed = 3,  ///< disk full, folder not writable, a bundled font damaged
};

/// Each exit status in words, by its number.
inline constexpr std::string_view kExitWords[] = {
    "done", "a rule is not met (check, make --strict)", "the job or the command line is wrong",
    "the computer could not do it (disk full, folder not writable, out of memory)"};

inline constexpr std::string_view kExitOfMany =
    "With many jobs, one that fails stops no other. The status is then 2 if any job is wrong, 3 if "
    "the computer could not do one.";

/// Printed below everything that is said about rules.
inline constexpr std::string_view kManualDecides =
    "The season's manual and its updates decide, and the inspector has the last word.\n";

}  // namespace swathe::app
