#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "rules/practice.hpp"

namespace swathe {
namespace {

/// Height of the padding that has board behind it.
double backed_height(const Section& section) {
  return std::min(section.padding_top_mm(), section.height_mm()) -
         std::max(section.padding_bottom_mm(), 0.0);
}

void judge_core(const CheckedSet& s, const Season& season, Findings& findings) {
  const PaddingKeys& padding = s.job.padding;
  const bool hollow_allowed = season.padding_hollow->value;
  CheckResult j{"padding-core",
                "padding",
                hollow_allowed ? "hollow or solid" : "solid noodles",
                "",
                Verdict::Pass,
                "",
                {{Subject::padding()}, {"padding.core"}}};
  if (padding.form == PaddingForm::Block) {
    j.measured = "block";
  } else if (padding.core == Core::Unstated) {
    j.measured = "noodles, solid or hollow is not known";
    j.verdict = hollow_allowed ? Verdict::Pass : Verdict::Unknown;
    j.advice = "look at the ends of the noodles, and set padding.core to \"solid\" or \"hollow\"";
  } else {
    const bool hollow = padding.core == Core::Hollow;
    j.measured = hollow ? "hollow noodles" : "solid noodles";
    j.verdict = hollow && !hollow_allowed ? Verdict::Fail : Verdict::Pass;
    j.advice = "take solid noodles: hollow ones are not allowed";
    j.about.mend = {{"padding.core", "\"solid\""}};
  }
  findings.add(*season.padding_hollow, j);
}

void judge_even(const CheckedSet& s, const Season& season, Findings& findings) {
  const PaddingKeys& padding = s.job.padding;
  CheckResult j{
      "padding-form", "padding", "no wedge: not tapered, stepped or one half-round",       "block",
      Verdict::Pass,  "",        {{Subject::padding()}, {"padding.form", "padding.stack"}}};
  if (padding.form == PaddingForm::Noodles) {
    j.measured = fmt::format("{} equal noodle{}", padding.stack, padding.stack == 1 ? "" : "s");
    if (padding.stack == 1) {
      j.verdict = Verdict::Unknown;
      j.advice = "ask the inspector, or stack two: a single round may be taken for a wedge";
      j.about.mend = {{"padding.stack", "2"}};
    }
  }
  findings.add(*season.padding_even, j);
}

/// "Nominal" names no tolerance, and foam is sold by none: near is passed, further off is a
/// warning.
void judge_noodle_pair(const CheckedSet& s, const Season& season, Findings& findings) {
  const PaddingKeys& padding = s.job.padding;
  const Length nominal = season.padding_noodle_pair->value;
  CheckResult j{"padding-form",
                "padding",
                fmt::format("two round noodles stacked, sold as {}", findings.exact_text(nominal)),
                "block",
                Verdict::Fail,
                "stack two round noodles",
                {{Subject::padding()},
                 {"padding.form", "padding.stack", "padding.diameter"},
                 {{"padding.form", "\"noodles\""},
                  {"padding.stack", "2"},
                  {"padding.diameter", findings.value(nominal)}}}};
  if (padding.form == PaddingForm::Noodles) {
    const double off = std::abs((padding.diameter - nominal).mm());
    j.measured = fmt::format("{} noodle{} of {}", padding.stack, padding.stack == 1 ? "" : "s",
                             findings.measured_text(padding.diameter.mm(), {nominal.mm()}));
    if (padding.stack == 2 && off <= practice::kOffNominal.mm() + kRounding) {
      j.verdict = off <= practice::kNearNominal.mm() + kRounding ? Verdict::Pass : Verdict::Warn;
      j.advice = "ask the inspector: the noodles are not the size that the rule names";
    }
  }
  findings.add(*season.padding_noodle_pair, j);
}

/// The furthest that padding runs past the end of the board behind it.
void judge_past_board(const CheckedSet& s, const Season& season, Findings& findings) {
  double most = 0;
  const bumper::Piece* where = nullptr;
  for (const bumper::Piece& padding : s.padding) {
    for (const bumper::Piece& board : s.boards) {
      if (board.bumper != padding.bumper || board.side != padding.side) continue;
      const double past = std::max(board.from_x - padding.from_x, padding.to_x - board.to_x);
      if (!where || past > most) {
        most = past;
        where = &padding;
      }
    }
  }
  if (!where) return;
  findings.at_most(
      *season.padding_past_board,
      {"padding-form",
       fmt::format("bumper {}, {} padding past its board's end", where->bumper, where->side),
       std::max(0.0, most),
       "saw the board longer, or cut the padding shorter",
       {{Subject::bumper(where->bumper)}, {"padding.lapping", "boards.lapping"}}},
      Grace::Inspection);
}

/// Padding and, where they are lower, boards of that height.
About as_high(const CheckedSet& s, Length height, const Findings& findings) {
  const PaddingKeys& padding = s.job.padding;
  About about{{Subject::padding(), Subject::boards()}, {"boards.height"}};
  if (padding.form == PaddingForm::Block) {
    about.keys.emplace_back("padding.height");
    if (padding.height < height) about.mend = {{"padding.height", findings.value(height)}};
  } else {
    about.keys.insert(about.keys.end(), {"padding.stack", "padding.diameter"});
    const double needs = std::ceil((height.mm() - kRounding) / padding.diameter.mm());
    if (needs > padding.stack)
      about.mend = {{"padding.stack", std::to_string(static_cast<int>(needs))}};
  }
  if (s.job.boards.height < height) about.mend.push_back({"boards.height", findings.value(height)});
  return about;
}

}  // namespace

void check_padding(const CheckedSet& s, const Season& season, Findings& findings) {
  if (season.padding_depth) {
    findings.at_least(
        *season.padding_depth,
        {"padding-depth",
         "padding in front of the boards",
         s.section.padding_depth_mm(),
         fmt::format("take padding {} deep", findings.exact_text(season.padding_depth->value)),
         {{Subject::padding()},
          {padding_depth_key(s.job)},
          {{padding_depth_key(s.job), findings.value(season.padding_depth->value)}}}},
        Grace::Inspection);
  }
  if (season.padding_height) {
    const double has = backed_height(s.section);
    findings.at_least(*season.padding_height,
                      {"padding-height", "padding with board behind it", has,
                       fmt::format("stack it higher or take higher boards: {} is missing",
                                   findings.rounded_text(season.padding_height->value.mm() - has)),
                       as_high(s, season.padding_height->value, findings)},
                      Grace::Inspection);
  }
  if (season.padding_hollow) judge_core(s, season, findings);
}

void check_padding_form(const CheckedSet& s, const Season& season, Findings& findings) {
  if (season.padding_even && season.padding_even->value) judge_even(s, season, findings);
  if (season.padding_noodle_pair) judge_noodle_pair(s, season, findings);
  if (season.padding_past_board) judge_past_board(s, season, findings);
}

}  // namespace swathe
