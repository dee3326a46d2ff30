#include "swathe/base.hpp"

namespace swathe {

std::string to_text(Verdict verdict) {
  switch (verdict) {
    case Verdict::Fail:
      return "fail";
    case Verdict::Warn:
      return "warn";
    case Verdict::Unknown:
      return "unknown";
    case Verdict::Pass:
      break;
  }
  return "pass";
}

std::string to_text(Attested attested) {
  switch (attested) {
    case Attested::Official:
      return "official";
    case Attested::Inferred:
      return "inferred";
    case Attested::Quoted:
      return "quoted";
    case Attested::Unverified:
      break;
  }
  return "unverified";
}

}  // namespace swathe
