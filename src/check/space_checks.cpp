#include <fmt/format.h>

#include <algorithm>

#include "check/checks.hpp"

// How far out and how high the bumpers stand: measured square to a side, from the true frame.
namespace swathe {
namespace {

/// The boards' front face, out from the true frame.
double board_front(const CheckedSet& s) { return s.frame.fit().mm() + s.section.thickness_mm(); }

std::string from_to(const Findings& findings, const rules::Zone& zone, double from, double to) {
  return fmt::format("{} to {}", findings.measured_text(from, {zone.from.mm()}),
                     findings.measured_text(to, {zone.to.mm()}));
}

/// Mounted higher or lower by what is wanting, where the other end has that much to spare: there
/// it is less than zero.
About at_height(const CheckedSet& s, const Findings& findings, double higher, double lower) {
  About about{{Subject::bumpers(), Subject::frame()}, {"frame.floor_gap", "boards.height"}};
  const double gap = s.frame.floor_gap().mm(), step = inches(1.0 / 16).mm();
  if (higher + lower > -step) return about;
  if (higher > kRounding) about.mend = {{"frame.floor_gap", findings.at_least_value(gap + higher)}};
  if (lower > kRounding && gap - lower >= step)
    about.mend = {{"frame.floor_gap", findings.at_most_value(gap - lower)}};
  return about;
}

void judge_zone_filled(const CheckedSet& s, const Season& season, Findings& findings) {
  const rules::Zone zone = season.zone_filled->value;
  const double floor = s.frame.floor_gap().mm();
  // Only padding with board behind it counts.
  const double bottom = floor + std::max(0.0, s.section.padding_bottom_mm());
  const double top = floor + std::min(s.section.height_mm(), s.section.padding_top_mm());
  const double too_high = bottom - zone.from.mm(), too_low = zone.to.mm() - top;
  const Verdict verdict = findings.verdict(std::max(too_high, too_low), Grace::Inspection);
  std::string advice;
  if (too_high > kRounding && too_low > kRounding) {
    advice = "take higher boards and padding";
  } else if (too_high > kRounding) {
    advice = fmt::format("mount the bumpers {} lower", findings.rounded_text(too_high));
  } else if (too_low > kRounding) {
    advice = fmt::format("mount the bumpers {} higher", findings.rounded_text(too_low));
  }
  findings.add(
      *season.zone_filled,
      {"zone", "padding with board behind it, above the floor",
       fmt::format("fills {} to {}", findings.exact_text(zone.from), findings.exact_text(zone.to)),
       from_to(findings, zone, bottom, top), verdict, findings.with_grace_note(verdict, advice),
       at_height(s, findings, too_low, too_high), findings.fills(zone)});
}

void judge_zone_inside(const CheckedSet& s, const Season& season, Findings& findings) {
  const rules::Zone zone = season.zone_inside->value;
  const double floor = s.frame.floor_gap().mm(), cloth = s.section.cloth_thickness_mm();
  const double bottom = floor + std::min(0.0, s.section.padding_bottom_mm()) - cloth;
  const double top = floor + std::max(s.section.height_mm(), s.section.padding_top_mm()) + cloth;
  const double under = zone.from.mm() - bottom, over = top - zone.to.mm();
  const Verdict verdict = findings.verdict(std::max(under, over), Grace::Inspection);
  const std::string advice =
      over > kRounding
          ? fmt::format("mount the bumpers {} lower", findings.rounded_text(over))
          : fmt::format("mount the bumpers {} higher", findings.rounded_text(std::max(0.0, under)));
  findings.add(
      *season.zone_inside,
      {"zone", "bumpers, above the floor",
       fmt::format("within {} to {}", findings.exact_text(zone.from), findings.exact_text(zone.to)),
       from_to(findings, zone, bottom, top), verdict, findings.with_grace_note(verdict, advice),
       at_height(s, findings, under, over), findings.within(zone)});
}

/// A job that gives no hard_depth may have bolt heads all the same.
void ask_for_hardware(const CheckedSet& s, CheckResult& judged) {
  if (judged.verdict == Verdict::Fail || s.job.boards.hard_depth.mm() > kRounding) return;
  judged.verdict = Verdict::Unknown;
  judged.measured += ", boards only, screw heads sunk";  // as the order of work has them
  judged.advice = "measure how far bolt heads stand out from the boards, and set boards.hard_depth";
}

}  // namespace

void check_extension(const CheckedSet& s, const Season& season, Findings& findings) {
  if (!season.extension_most) return;
  const double out =
      s.frame.fit().mm() + s.section.depth_mm() + 0.5 * s.section.cloth_thickness_mm();
  findings.at_most(
      *season.extension_most,
      {"extension",
       "from the frame out to the cloth",
       out,
       fmt::format("make board, padding or frame.fit thinner by {}",
                   findings.rounded_text(out - season.extension_most->value.mm())),
       {{Subject::bumpers()},
        {"boards.thickness", padding_depth_key(s.job), "frame.fit", "cloth.thickness"}}},
      Grace::Inspection);
}

void check_hard_parts(const CheckedSet& s, const Season& season, Findings& findings) {
  const double hard = s.job.boards.hard_depth.mm();
  if (season.hard_parts_past_frame) {
    const Length limit = season.hard_parts_past_frame->value;
    const double out = board_front(s) + hard;
    const Verdict verdict = findings.verdict(out - limit.mm(), Grace::Inspection);
    CheckResult j{
        "hard-parts",
        "boards and bolt heads, out from the frame",
        fmt::format("at most {}", findings.exact_text(limit)),
        findings.measured_text(out, {limit.mm()}),
        verdict,
        findings.with_grace_note(
            verdict, fmt::format("bring them in by {}", findings.rounded_text(out - limit.mm()))),
        {{Subject::boards()}, {"boards.hard_depth", "boards.thickness", "frame.fit"}},
        findings.at_most_of(limit, Grace::Inspection)};
    ask_for_hardware(s, j);
    findings.add(*season.hard_parts_past_frame, j);
  }
  if (season.hard_parts_under_padding) {
    const Length limit = season.hard_parts_under_padding->value;
    const double over = s.section.padding_depth_mm() - hard;
    const Verdict verdict = findings.verdict(limit.mm() - over, Grace::Inspection);
    CheckResult j{
        "hard-parts",
        "padding in front of boards and bolt heads",
        fmt::format("at least {}", findings.exact_text(limit)),
        findings.measured_text(over, {limit.mm()}),
        verdict,
        findings.with_grace_note(
            verdict, fmt::format("sink the bolt heads or take deeper padding: {} is missing",
                                 findings.rounded_text(limit.mm() - over))),
        {{Subject::boards(), Subject::padding()}, {"boards.hard_depth", padding_depth_key(s.job)}},
        findings.at_least_of(limit, Grace::Inspection)};
    ask_for_hardware(s, j);
    findings.add(*season.hard_parts_under_padding, j);
  }
}

void check_zone(const CheckedSet& s, const Season& season, Findings& findings) {
  if (season.zone_filled) judge_zone_filled(s, season, findings);
  if (season.zone_inside) judge_zone_inside(s, season, findings);
}

}  // namespace swathe
