#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "check/check.hpp"
#include "check/check_id.hpp"
#include "swathe/check.hpp"

// How the checks write down what they found.
namespace swathe {

/// Rounding that no tape measure shows, mm.
inline constexpr double kRounding = 1e-3;

/// What a finding is about, for programs.
struct About {
  std::vector<Subject> subjects{};
  std::vector<std::string> keys{};
  std::vector<KeyChange> mend{};  ///< what the advice comes to, where that is a change of keys
};

/// What one check found, before the source of its rule is taken into account.
struct CheckResult {
  CheckId id;
  std::string subject;
  std::string required;
  std::string measured;
  Verdict verdict = Verdict::Unknown;
  std::string advice;
  About about{};
  Limit limit{};  ///< less what the source of its rule makes of it
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

/// What an unverified rule makes of a verdict: it is never passed, and the advice says why.
void add_doubt(Attested attested, Verdict& verdict, std::string& advice);

/// Collects the findings of one run. Writes lengths in the job's units and keeps the promises of
/// check().
class Findings {
 public:
  Findings(const CheckedSet& subject, const Season& season)
      : units_(subject.job.units), season_(season) {}

  /// Under a rule of the season.
  template <class T>
  // It is moved from, which clang-tidy sees in no template.
  // NOLINTNEXTLINE(performance-unnecessary-value-param)
  void add(const RuleValue<T>& rule, CheckResult result) {
    add_with_source(rule.rule, rule.attested, rule.guideline, std::move(result));
  }
  /// Our own advice.
  void advise(CheckResult result);

  void at_least(const RuleValue<Length>& rule, Measure measure, Grace grace);
  void at_most(const RuleValue<Length>& rule, Measure measure, Grace grace);

  std::string exact_text(Length length) const;
  /// As a tape measure shows it: in inches to 1/16, or in 1/32 or 1/64 where it is a number of
  /// those. Finer, in the end in decimals, where it would not be told on the same side of a limit:
  /// what fails never reads as what it fails.
  std::string measured_text(double mm, std::initializer_list<double> limits_mm = {}) const;
  /// The same of a length and a limit that is worked out and not round itself.
  struct Held {
    std::string limit, measured;
  };
  Held held_texts(double mm, double limit_mm) const;
  /// A distance that somebody walks: in feet or meters.
  std::string distance_text(Length length) const;
  /// A length to cut or to move by: rounded to what a tape measure shows.
  std::string rounded_text(double mm) const;

  /// A length as a job is given it.
  std::string value(Length length) const;
  /// The same to a tape's step, that length or more, or that length or less.
  std::string at_least_text(double mm) const;
  std::string at_least_value(double mm) const;
  std::string at_most_value(double mm) const;

  // Limits of what a finished bumper measures.
  Limit fills(const rules::Zone& zone) const { return heights(Limit::Of::Fills, zone); }
  Limit within(const rules::Zone& zone) const { return heights(Limit::Of::Within, zone); }
  Limit at_least_of(Length least, Grace grace) const;
  Limit at_most_of(Length most, Grace grace) const;

  /// Pass where nothing is missing, Warn where the grace makes up for it, else Fail.
  Verdict verdict(double short_by_mm, Grace grace) const;
  /// The advice; where only the inspector's grace makes the verdict a warning, that is added.
  std::string with_grace_note(Verdict verdict, std::string advice) const;

  std::vector<Measurable> worst_first() &&;

 private:
  void add_with_source(const std::string& rule, Attested attested, bool guideline,
                       CheckResult result);
  void length(const RuleValue<Length>& rule, Measure measure, Grace grace, double short_by_mm,
              const Limit& limit, const char* word);
  Limit heights(Limit::Of of, const rules::Zone& zone) const;
  double grace_mm(Grace grace) const;

  Units units_;
  const Season& season_;
  std::vector<Measurable> findings_;
};

}  // namespace swathe
