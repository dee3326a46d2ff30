#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "rules/practice.hpp"

namespace swathe {
namespace {

About board_height(const Findings& findings, Length height) {
  return {{Subject::boards()}, {"boards.height"}, {{"boards.height", findings.value(height)}}};
}

void judge_nominal_height(const CheckedSet& s, const Season& season, Findings& findings) {
  const Length nominal = season.backing_nominal_height->value;
  const Length within =
      season.backing_height_within ? season.backing_height_within->value : Length();
  const double off = std::abs((s.job.boards.height - nominal).mm());
  Limit limit = findings.at_least_of(nominal - within, Grace::Inspection);
  limit.most = (nominal + within).mm();
  findings.add(*season.backing_nominal_height,
               {"backing-height", "boards",
                fmt::format("{} to {}", findings.exact_text(nominal - within),
                            findings.exact_text(nominal + within)),
                findings.measured_text(s.job.boards.height.mm(),
                                       {limit.least.value_or(0), limit.most.value_or(0)}),
                findings.verdict(off - within.mm(), Grace::Inspection),
                fmt::format("saw the boards {} high", findings.exact_text(nominal)),
                board_height(findings, nominal), limit});
}

/// What is sold under a nominal thickness measures less: 3/4 in sheets are made to 23/32 in or 3/4
/// in and a tolerance. Source: voluntary product standard PS 1, tolerances of unsanded panels: 1/32
/// in, so 11/16 in (17.46 mm) is the least of 23/32 and 25/32 in (19.84 mm) the most of 3/4.
void judge_thickness(const CheckedSet& s, const Season& season, Findings& findings) {
  const Length nominal = season.backing_nominal_thickness->value;
  const Length least = nominal - inches(1.0 / 16), most = nominal + inches(1.0 / 32);
  const Length has = s.job.boards.thickness;
  const double short_by = std::max((least - has).mm(), (has - most).mm());
  const Length may_be_read_so = inches(1.0 / 16);
  const Verdict verdict = short_by <= kRounding                         ? Verdict::Pass
                          : short_by <= may_be_read_so.mm() + kRounding ? Verdict::Warn
                                                                        : Verdict::Fail;
  findings.add(
      *season.backing_nominal_thickness,
      {"backing-thickness",
       "boards",
       fmt::format("sold as {}: {} to {} measured", findings.exact_text(nominal),
                   findings.measured_text(least.mm()), findings.measured_text(most.mm())),
       findings.measured_text(has.mm(), {least.mm(), most.mm()}),
       verdict,
       fmt::format("take plywood sold as {}", findings.exact_text(nominal)),
       {{Subject::boards()}, {"boards.thickness"}, {{"boards.thickness", findings.value(nominal)}}},
       {Limit::Of::Length, least.mm(), most.mm(), false, may_be_read_so.mm()}});
}

}  // namespace

void check_backing(const CheckedSet& s, const Season& season, Findings& findings) {
  if (season.backing_height) {
    findings.at_least(
        *season.backing_height,
        {"backing-height", "boards", s.job.boards.height.mm(),
         fmt::format("saw the boards {} high", findings.exact_text(season.backing_height->value)),
         board_height(findings, season.backing_height->value)},
        Grace::Inspection);
  }
  if (season.backing_nominal_height) judge_nominal_height(s, season, findings);
  if (season.backing_nominal_thickness) judge_thickness(s, season, findings);
}

// What stands behind the boards is the job's own word; the gap between is the fit.
void check_support(const CheckedSet& s, const Season& season, Findings& findings) {
  const bool backed = s.job.frame.backed;
  CheckResult by_word{
      "support",
      "",
      "",
      backed ? "yes, frame.backed says so" : "no, frame.backed says so",
      backed ? Verdict::Pass : Verdict::Fail,
      "put frame behind the boards, then set frame.backed to true",
      {{Subject::frame(), Subject::boards()}, {"frame.backed"}, {{"frame.backed", "true"}}}};
  if (season.support_end_backed) {
    by_word.subject = "ends of the boards";
    by_word.required = fmt::format("{} of frame behind each",
                                   findings.exact_text(season.support_end_backed->value));
    findings.add(*season.support_end_backed, by_word);
  }
  if (season.support_gap_depth && season.support_gap_width) {
    by_word.subject = "boards between their ends";
    by_word.required = fmt::format("no gap behind them that is deeper than {} and wider than {}",
                                   findings.exact_text(season.support_gap_depth->value),
                                   findings.exact_text(season.support_gap_width->value));
    findings.add(*season.support_gap_depth, by_word);
  }
  if (season.support_end_gap) {
    findings.at_most(*season.support_end_gap,
                     {"support",
                      "play between frame and boards",
                      s.frame.fit().mm(),
                      fmt::format("set frame.fit to at most {}",
                                  findings.exact_text(season.support_end_gap->value)),
                      {{Subject::frame(), Subject::boards()},
                       {"frame.fit"},
                       {{"frame.fit", findings.value(season.support_end_gap->value)}}}},
                     Grace::Inspection);
  }
}

// The hem of a flap is two layers, and its strip is closed on the board's half.
void check_play(const CheckedSet& s, const Season&, Findings& findings) {
  if (s.job.cloth.fixing != Fixing::HookAndLoop) return;
  const double takes = 2 * s.section.cloth_thickness_mm() + practice::kClosedStrip.mm();
  const double play = s.frame.fit().mm();
  if (play >= takes - kRounding) return;
  const std::string enough = findings.at_least_value(takes);
  const Findings::Held held = findings.held_texts(play, takes);
  findings.advise({"play",
                   "between frame and boards",
                   fmt::format("at least {} for a hem and its hook-and-loop, closed", held.limit),
                   held.measured,
                   Verdict::Warn,
                   fmt::format("set frame.fit to {}", enough),
                   {{Subject::frame(), Subject::cloth()},
                    {"frame.fit", "cloth.fixing", "cloth.thickness"},
                    {{"frame.fit", enough}}}});
}

}  // namespace swathe
