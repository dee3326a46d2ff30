#pragma once

#include <string>
#include <vector>

#include "swathe/base/key_change.hpp"
#include "swathe/base/subject.hpp"

namespace swathe {

/// What a check came to.
enum class Verdict { Fail, Warn, Unknown, Pass };  // in the order in which people want to read them

/// How sure a rule's value is. Only what stands in an official text may pass or fail a job.
enum class Attested { Official, Inferred, Quoted, Unverified };

/// One rule held against what was made. Data, not an error: the drawing is still made.
struct Finding {
  std::string id;        ///< "numeral-height" and the like: the list is in the report's schema
  std::string rule;      ///< season and rule number, "2026 R412"; empty for our own advice
  std::string subject;   ///< what was looked at: "front numeral", "bumper A, left bracket"
  std::string required;  ///< in the job's units, in words
  std::string measured;  ///< in the job's units, in words
  Verdict verdict = Verdict::Unknown;
  Attested attested = Attested::Official;
  std::string advice;             ///< what would change the verdict; empty when it passes
  std::vector<Subject> subjects;  ///< the parts of the model it is about, the rule besides
  std::vector<std::string> keys;  ///< of the job that say them: "bumper.2.from"
  std::vector<KeyChange> mend;    ///< together they mend it; empty where none is known
};

std::string to_text(Verdict verdict);
std::string to_text(Attested attested);

}  // namespace swathe
