#include "check/book.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "job/key_path.hpp"
#include "swathe/base/units.hpp"

namespace swathe {
namespace {

constexpr const char* kNotRead =
    "the text of this rule was not read for this season: look it up in the manual";

Finding finding_of(Judged judged) {
  Finding finding;
  finding.id = judged.id.text();
  finding.subject = std::move(judged.subject);
  finding.required = std::move(judged.required);
  finding.measured = std::move(judged.measured);
  finding.verdict = judged.verdict;
  finding.advice = std::move(judged.advice);
  finding.subjects = std::move(judged.about.subjects);
  finding.keys = std::move(judged.about.keys);
  if (finding.verdict != Verdict::Pass) finding.mend = std::move(judged.about.mend);
  return finding;
}

}  // namespace

void Book::enter(const std::string& rule, Attested attested, bool guideline, Judged judged) {
  Finding finding = finding_of(std::move(judged));
  finding.rule = season_.name + " " + rule;
  finding.attested = attested;
  if (!rule.empty()) finding.subjects.push_back(Subject::rule(rule));
  if (finding.verdict == Verdict::Pass) finding.advice.clear();
  if (guideline && finding.verdict == Verdict::Fail) finding.verdict = Verdict::Warn;
  if (attested == Attested::Unverified) {
    if (finding.verdict == Verdict::Fail) finding.verdict = Verdict::Warn;
    if (finding.verdict == Verdict::Pass) finding.verdict = Verdict::Unknown;
    finding.advice += finding.advice.empty() ? "" : "; ";
    finding.advice += kNotRead;
  }
  findings_.push_back(std::move(finding));
}

void Book::advise(Judged judged) {
  Finding finding = finding_of(std::move(judged));
  if (finding.verdict == Verdict::Pass) finding.advice.clear();
  findings_.push_back(std::move(finding));
}

std::string Book::exactly(Length length) const { return exact(length, units_); }
std::string Book::about(double mm) const { return measured(Length::from_mm(mm), units_); }
std::string Book::far(Length length) const { return walked(length, units_); }
std::string Book::on_tape(double mm) const {
  return dimension_with_unit(Length::from_mm(mm), units_);
}

std::string Book::value(Length length) const { return quoted_text(exactly(length)); }

std::string Book::at_least_value(double mm) const {
  const Length step = units_ == Units::Inches ? inches(1.0 / 16) : Length::from_mm(1);
  return value(std::ceil(Length::from_mm(mm - kNoTape) / step) * step);
}

std::string Book::at_most_value(double mm) const {
  const Length step = units_ == Units::Inches ? inches(1.0 / 16) : Length::from_mm(1);
  return value(std::floor(Length::from_mm(mm + kNoTape) / step) * step);
}

Verdict Book::verdict(double short_by_mm, Grace grace) const {
  if (short_by_mm <= kNoTape) return Verdict::Pass;
  const bool allowed = grace == Grace::Inspection && season_.general_grace &&
                       short_by_mm <= season_.general_grace->value.mm() + kNoTape;
  return allowed ? Verdict::Warn : Verdict::Fail;
}

std::string Book::graced(Verdict verdict, std::string advice) const {
  if (verdict != Verdict::Warn || !season_.general_grace) return advice;
  return fmt::format("design to nominal, the {} of grace is the inspector's: {}",
                     exactly(season_.general_grace->value), advice);
}

void Book::length(const RuleValue<Length>& rule, Measure measure, Grace grace, double short_by_mm,
                  const char* word) {
  const Verdict come_to = verdict(short_by_mm, grace);
  add(rule, {measure.id, std::move(measure.subject),
             fmt::format("{} {}", word, exactly(rule.value)), about(measure.has_mm), come_to,
             graced(come_to, std::move(measure.advice)), std::move(measure.about)});
}

void Book::at_least(const RuleValue<Length>& rule, Measure measure, Grace grace) {
  const double short_by_mm = rule.value.mm() - measure.has_mm;
  length(rule, std::move(measure), grace, short_by_mm, "at least");
}

void Book::at_most(const RuleValue<Length>& rule, Measure measure, Grace grace) {
  const double over_by_mm = measure.has_mm - rule.value.mm();
  length(rule, std::move(measure), grace, over_by_mm, "at most");
}

std::vector<Finding> Book::worst_first() && {
  std::ranges::stable_sort(findings_, {}, &Finding::verdict);
  return std::move(findings_);
}

}  // namespace swathe
