#include "check/findings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "job/key_path.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

Finding finding_of(CheckResult result) {
  Finding finding;
  finding.id = result.id.text();
  finding.subject = std::move(result.subject);
  finding.required = std::move(result.required);
  finding.measured = std::move(result.measured);
  finding.verdict = result.verdict;
  finding.advice = std::move(result.advice);
  finding.subjects = std::move(result.about.subjects);
  finding.keys = std::move(result.about.keys);
  if (finding.verdict != Verdict::Pass) finding.mend = std::move(result.about.mend);
  return finding;
}

constexpr int kFinest = 64;
constexpr int kTape[] = {16, 32, kFinest};  ///< parts of an inch
constexpr int kMostDecimals = 5;            ///< of an inch: finer than kRounding

/// The nearest so many parts of an inch, half upwards.
Length to_parts(Length length, int parts) {
  return inches(std::floor(length.inches() * parts + 0.5 + 1e-9) / parts);
}

/// A length told in so many parts of an inch; in finer ones where it is a number of those.
Length told(Length length, int parts) {
  constexpr double kArithmetic = 1e-6;  // mm, that arithmetic may have lost
  const Length fine = to_parts(length, kFinest);
  return std::abs((fine - length).mm()) < kArithmetic ? fine : to_parts(length, parts);
}

/// Less than a limit, at it, or more.
int side_of(Length limit, Length length) {
  const double over = (length - limit).mm();
  return std::abs(over) <= kRounding ? 0 : over > 0 ? 1 : -1;
}

}  // namespace

void Findings::add_with_source(const std::string& rule, Attested attested, bool guideline,
                               CheckResult result) {
  Limit limit = result.limit;
  Finding finding = finding_of(std::move(result));
  finding.rule = season_.name + " " + rule;
  finding.attested = attested;
  if (!rule.empty()) finding.subjects.push_back(Subject::rule(rule));
  if (finding.verdict == Verdict::Pass) finding.advice.clear();
  const bool may_fail = !guideline && attested != Attested::Unverified;
  if (!may_fail) limit.missed = Verdict::Warn;
  if (!may_fail && finding.verdict == Verdict::Fail) finding.verdict = Verdict::Warn;
  add_doubt(attested, finding.verdict, finding.advice);
  findings_.push_back({std::move(finding), limit});
}

void add_doubt(Attested attested, Verdict& verdict, std::string& advice) {
  if (attested != Attested::Unverified) return;
  if (verdict == Verdict::Pass) verdict = Verdict::Unknown;
  advice += advice.empty() ? "" : "; ";
  advice += "we have not read this rule in this season's manual: look it up there";
}

void Findings::advise(CheckResult result) {
  Finding finding = finding_of(std::move(result));
  if (finding.verdict == Verdict::Pass) finding.advice.clear();
  findings_.push_back({std::move(finding), {}});
}

std::string Findings::exact_text(Length length) const { return exact(length, units_); }
std::string Findings::measured_text(double mm, std::initializer_list<double> limits_mm) const {
  const Length length = Length::from_mm(mm);
  if (units_ == Units::Millimeters) return measured(length, units_);
  const auto stands = [&](Length is_told) {
    return std::ranges::all_of(limits_mm, [&](double limit_mm) {
      const Length limit = Length::from_mm(limit_mm);
      return side_of(limit, is_told) == side_of(limit, length);
    });
  };
  for (const int parts : kTape)
    if (const Length is_told = told(length, parts); stands(is_told)) return exact(is_told, units_);
  for (int decimals = 3;; ++decimals) {
    const std::string text = plain_number(length.inches(), decimals);
    if (decimals == kMostDecimals || stands(inches(parse_number(text).value_or(0))))
      return text + " in";
  }
}

Findings::Held Findings::held_texts(double mm, double limit_mm) const {
  const Length length = Length::from_mm(mm), limit = Length::from_mm(limit_mm);
  if (units_ == Units::Millimeters) return {measured(limit, units_), measured(length, units_)};
  const int side = side_of(limit, length);
  for (const int parts : kTape) {
    const Length is_told = told(length, parts), limit_told = told(limit, parts);
    if (side_of(limit_told, is_told) == side)
      return {exact(limit_told, units_), exact(is_told, units_)};
  }
  for (int decimals = 3;; ++decimals) {
    const std::string is_told = plain_number(length.inches(), decimals);
    const std::string limit_told = plain_number(limit.inches(), decimals);
    if (decimals == kMostDecimals || is_told != limit_told)
      return {limit_told + " in", is_told + " in"};
  }
}

std::string Findings::distance_text(Length length) const { return walked(length, units_); }
std::string Findings::rounded_text(double mm) const {
  return dimension_with_unit(Length::from_mm(mm), units_);
}

std::string Findings::value(Length length) const { return quoted_text(exact_text(length)); }

std::string Findings::at_least_text(double mm) const {
  const Length step = units_ == Units::Inches ? inches(1.0 / 16) : Length::from_mm(1);
  return exact_text(std::ceil(Length::from_mm(mm - kRounding) / step) * step);
}

std::string Findings::at_least_value(double mm) const { return quoted_text(at_least_text(mm)); }

std::string Findings::at_most_value(double mm) const {
  const Length step = units_ == Units::Inches ? inches(1.0 / 16) : Length::from_mm(1);
  return value(std::floor(Length::from_mm(mm + kRounding) / step) * step);
}

Verdict Findings::verdict(double short_by_mm, Grace grace) const {
  if (short_by_mm <= kRounding) return Verdict::Pass;
  const double allowed = grace_mm(grace);
  return allowed > 0 && short_by_mm <= allowed + kRounding ? Verdict::Warn : Verdict::Fail;
}

double Findings::grace_mm(Grace grace) const {
  return grace == Grace::Inspection && season_.general_grace ? season_.general_grace->value.mm()
                                                             : 0.0;
}

Limit Findings::heights(Limit::Of of, const rules::Zone& zone) const {
  return {of, zone.from.mm(), zone.to.mm(), false, grace_mm(Grace::Inspection)};
}

Limit Findings::at_least_of(Length least, Grace grace) const {
  return {Limit::Of::Length, least.mm(), std::nullopt, false, grace_mm(grace)};
}

Limit Findings::at_most_of(Length most, Grace grace) const {
  return {Limit::Of::Length, std::nullopt, most.mm(), false, grace_mm(grace)};
}

std::string Findings::with_grace_note(Verdict verdict, std::string advice) const {
  if (verdict != Verdict::Warn || !season_.general_grace) return advice;
  return fmt::format("{}; the inspector may allow {}, but do not count on it", advice,
                     exact_text(season_.general_grace->value));
}

void Findings::length(const RuleValue<Length>& rule, Measure measure, Grace grace,
                      double short_by_mm, const Limit& limit, const char* word) {
  const Verdict result = verdict(short_by_mm, grace);
  add(rule,
      {measure.id, std::move(measure.subject), fmt::format("{} {}", word, exact_text(rule.value)),
       measured_text(measure.has_mm, {rule.value.mm()}), result,
       with_grace_note(result, std::move(measure.advice)), std::move(measure.about), limit});
}

void Findings::at_least(const RuleValue<Length>& rule, Measure measure, Grace grace) {
  const double short_by_mm = rule.value.mm() - measure.has_mm;
  length(rule, std::move(measure), grace, short_by_mm, at_least_of(rule.value, grace), "at least");
}

void Findings::at_most(const RuleValue<Length>& rule, Measure measure, Grace grace) {
  const double over_by_mm = measure.has_mm - rule.value.mm();
  length(rule, std::move(measure), grace, over_by_mm, at_most_of(rule.value, grace), "at most");
}

std::vector<Measurable> Findings::worst_first() && {
  std::ranges::stable_sort(findings_, {},
                           [](const Measurable& one) { return one.finding.verdict; });
  return std::move(findings_);
}

}  // namespace swathe
