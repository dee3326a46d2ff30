#pragma once

namespace swathe::app {

/// How a run ends, as scripts see it.
enum class Exit {
  Done = 0,           ///< for check: and every rule is met
  RuleNotMet = 1,     ///< done, but a rule is not met
  WrongInput = 2,     ///< the command line, the job or a file it names is wrong
  MachineFailed = 3,  ///< disk full, folder not writable, a bundled face damaged
};

}  // namespace swathe::app
