#include "verdicts.hpp"

namespace swathe::app {

std::string painted_verdict(Verdict verdict, const Terminal& terminal) {
  switch (verdict) {
    case Verdict::Fail:
      return terminal.painted("FAIL", Paint::Bad);
    case Verdict::Warn:
      return terminal.painted("WARN", Paint::Doubtful);
    case Verdict::Unknown:
      return "unknown";
    case Verdict::Pass:
      break;
  }
  return terminal.painted("pass", Paint::Good);
}

}  // namespace swathe::app
