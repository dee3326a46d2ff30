#pragma once

#include <string>
#include <vector>

#include "check/check_id.hpp"
#include "swathe/check/check.hpp"

// How a check writes down what it found.
namespace swathe {

/// Rounding that no tape shows, mm.
inline constexpr double kNoTape = 1e-3;

/// What a finding is about, for programs.
struct About {
  std::vector<Subject> subjects{};
  std::vector<std::string> keys{};
  std::vector<KeyChange> mend{};  ///< what the advice comes to, where that is a change of keys
};

/// What a check came to, before the rule it rests on has its say.
struct Judged {
  CheckId id;
  std::string subject;
  std::string required;
  std::string measured;
  Verdict verdict = Verdict::Unknown;
  std::string advice;
  About about{};
};

/// A length held against a limit.
struct Measure {
  CheckId id;
  std::string subject;
  double has_mm = 0;
  std::string advice;
  About about{};
};

/// Who may allow a little more than the rule: nobody, or the inspector by the season's grace.
enum class Grace { None, Inspection };

/// The findings of one run. Words lengths in the job's units and keeps the promises of check().
class Book {
 public:
  Book(const CheckedSet& subject, const Season& season)
      : units_(subject.job.units), season_(season) {}

  /// Under a rule of the season.
  template <class T>
  // It is moved from, which clang-tidy sees in no template.
  // NOLINTNEXTLINE(performance-unnecessary-value-param)
  void add(const RuleValue<T>& rule, Judged judged) {
    enter(rule.rule, rule.attested, rule.guideline, std::move(judged));
  }
  /// Our own advice.
  void advise(Judged judged);

  void at_least(const RuleValue<Length>& rule, Measure measure, Grace grace);
  void at_most(const RuleValue<Length>& rule, Measure measure, Grace grace);

  std::string exactly(Length length) const;
  std::string about(double mm) const;
  /// A way to be walked.
  std::string far(Length length) const;
  /// A length to work to: rounded to what a tape shows.
  std::string on_tape(double mm) const;

  /// A length as a job is given it.
  std::string value(Length length) const;
  /// The same to a tape's step, that length or more, or that length or less.
  std::string at_least_value(double mm) const;
  std::string at_most_value(double mm) const;

  /// Pass where nothing is missing, Warn where the grace makes up for it, else Fail.
  Verdict verdict(double short_by_mm, Grace grace) const;
  /// The advice, with "design to nominal" before it where only the grace saves the verdict.
  std::string graced(Verdict verdict, std::string advice) const;

  std::vector<Finding> worst_first() &&;

 private:
  void enter(const std::string& rule, Attested attested, bool guideline, Judged judged);
  void length(const RuleValue<Length>& rule, Measure measure, Grace grace, double short_by_mm,
              const char* word);

  Units units_;
  const Season& season_;
  std::vector<Finding> findings_;
};

}  // namespace swathe
