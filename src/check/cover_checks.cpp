#include <fmt/format.h>

#include <algorithm>

#include "check/checks.hpp"
#include "check/opening_advice.hpp"
#include "check/plan.hpp"
#include "job/key_path.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

std::string between(const CheckedSet& s, std::size_t bumper) {
  const std::size_t next = bumper_after(s, bumper);
  if (next == bumper) return fmt::format("between the ends of {}", s.wraps[bumper].run().name);
  return fmt::format("between {} and {}", s.wraps[bumper].run().name, s.wraps[next].run().name);
}

std::string key_of(const CheckedSet& s, std::size_t bumper, const char* name) {
  return fmt::format("bumper.{}.{}", s.wraps[bumper].run().keys + 1, name);
}

/// The gap after a bumper: the two ends beside it and the keys that place them.
About gap_after(const CheckedSet& s, std::size_t bumper) {
  const std::size_t next = bumper_after(s, bumper);
  About about{
      {Subject::end(s.wraps[bumper].run().name, false),
       Subject::end(s.wraps[next].run().name, true)},
      {key_of(s, bumper, "to"), key_of(s, next, "from"), key_of(s, bumper, "end_clearance")}};
  if (next != bumper) about.keys.push_back(key_of(s, next, "end_clearance"));
  return about;
}

/// Ends that would collide: each is to be drawn back by as much.
CheckResult ends_collide(const CheckedSet& s, std::size_t bumper, const Findings& findings) {
  const double gap = s.covered_gaps[bumper];
  const double by_mm = 0.5 * (inches(1.0 / 8).mm() - gap);
  About about = gap_after(s, bumper);
  std::string advice;
  const auto draw_back = [&](std::size_t of) {
    const std::string key = key_of(s, of, "end_clearance");
    const double enough = s.wraps[of].run().end_clearance + by_mm;
    advice += fmt::format("{} {} to {}", advice.empty() ? "set" : " and", key,
                          findings.at_least_text(enough));
    about.mend.push_back({key, findings.at_least_value(enough)});
  };
  const std::size_t next = bumper_after(s, bumper);
  draw_back(bumper);
  if (next != bumper) draw_back(next);
  return {"cover-gap",
          between(s, bumper),
          "room for the cloth on both ends",
          findings.measured_text(gap, {0}),
          Verdict::Warn,
          advice + ": the bumpers would push each other",
          std::move(about)};
}

/// A bumper made longer at its end, where the job says that end as a distance.
About lengthened(const CheckedSet& s, std::size_t bumper, double by_mm, const Findings& findings) {
  About about = gap_after(s, bumper);
  const RunEnd& to = s.job.bumpers[static_cast<std::size_t>(s.wraps[bumper].run().keys)].to;
  const auto* const at = std::get_if<FromCorner>(&to.at);
  const int side = s.wraps[bumper_after(s, bumper)].run().sides.front().side;
  if (!at || s.wraps[bumper].run().sides.back().side != side) return about;
  const double told = at->distance.mm();
  const std::string value = s.frame.begins_at(side, at->neighbor)
                                ? findings.at_least_value(told + by_mm)
                                : findings.at_most_value(told - by_mm);
  if (s.frame.begins_at(side, at->neighbor) || told >= by_mm)
    about.mend = {{key_of(s, bumper, "to"), fmt::format("[{}, {}, {}]", quoted_text(to.side), value,
                                                        quoted_text(at->neighbor))}};
  return about;
}

/// Frame covered beside the corners at both ends of a gap, the lesser; zero where a corner lies in
/// the gap.
double covered_beside_corners(const CheckedSet& s, std::size_t bumper) {
  const RunSide& end = s.wraps[bumper].run().sides.back();
  const RunSide& start = s.wraps[bumper_after(s, bumper)].run().sides.front();
  if (end.side != start.side || start.from_x < end.to_x) return 0.0;
  const double length = s.frame.sides()[static_cast<std::size_t>(end.side)].length_mm;
  const double before = end.to_x - past_true_corner(s.frame, s.frame.previous(end.side));
  const double after = length - start.from_x - past_true_corner(s.frame, end.side);
  return std::max(0.0, std::min(before, after));
}

/// Stretches that touch, or nearly, are one.
std::vector<CoveredStretch> joined(const std::vector<CoveredStretch>& stretches, double near) {
  std::vector<CoveredStretch> list;
  for (const CoveredStretch& next : stretches) {
    if (!list.empty() && next.from <= list.back().to + near) {
      list.back().to = std::max(list.back().to, next.to);
    } else {
      list.push_back(next);
    }
  }
  return list;
}

/// How far from a side's left or right corner the bumper begins, and how far it then runs.
struct Reach {
  double begins = 0, runs = 0;
};
Reach reach_of(const CoveredSide& side, bool from_left, double near) {
  const auto stretches = joined(side.covered, near);
  if (stretches.empty()) return {side.length, 0};
  const CoveredStretch& s = from_left ? stretches.front() : stretches.back();
  const double from = std::clamp(s.from, 0.0, side.length);
  const double to = std::clamp(s.to, 0.0, side.length);
  return {from_left ? from : side.length - to, to - from};
}

/// "Less than": a gap of just as much is too wide.
Limit narrower_than(Length gap, const Findings& findings) {
  Limit limit = findings.at_most_of(gap, Grace::Inspection);
  limit.below_most = true;
  return limit;
}

/// A gap that is too wide and that no rule allows.
void judge_wide_gap(const CheckedSet& s, const Season& season, std::size_t bumper,
                    std::size_t how_many, Findings& findings) {
  const RuleValue<Length>& rule = *season.cover_gap;
  const double gap = s.bare_gaps[bumper], over = gap - rule.value.mm();
  CheckResult j{"cover-gap",
                between(s, bumper),
                fmt::format("less than {}", findings.exact_text(rule.value)),
                findings.measured_text(gap, {rule.value.mm()}),
                Verdict::Fail,
                ""};
  j.verdict = findings.verdict(std::max(over, 2 * kRounding), Grace::Inspection);  // "less than"
  j.advice = findings.with_grace_note(
      j.verdict,
      fmt::format("lengthen a bumper by {}", findings.rounded_text(over + inches(1.0 / 16).mm())));
  j.limit = narrower_than(rule.value, findings);
  j.about = lengthened(s, bumper, over + inches(1.0 / 16).mm(), findings);
  // Where only the cloth on the ends makes the gap narrow enough, it depends on how the inspector
  // measures.
  if (bumper < s.covered_gaps.size() && s.covered_gaps[bumper] < rule.value.mm() - kRounding) {
    j.verdict = Verdict::Warn;
    j.measured += fmt::format(", or {} from cloth to cloth",
                              findings.measured_text(s.covered_gaps[bumper], {rule.value.mm()}));
  }
  if (season.cover_larger_gap && how_many > 1) j.advice += "; only one gap may be wider";
  findings.add(rule, j);
}

/// The one gap that may be larger, for what it leaves covered.
void judge_larger_gap(const CheckedSet& s, const Season& season, std::size_t bumper,
                      Findings& findings) {
  Measure measure{
      "cover-gap",
      fmt::format("{}, the one wider gap, {}: frame covered beside its corners", between(s, bumper),
                  findings.measured_text(s.bare_gaps[bumper], {season.cover_gap->value.mm()})),
      covered_beside_corners(s, bumper),
      "keep the gap further from the frame's corners, or close it", gap_after(s, bumper)};
  const int side = s.wraps[bumper].run().sides.back().side;
  if (const auto opening = opening_beside(s, side, season.cover_larger_gap->value.mm())) {
    OpeningAdvice advice = narrower(*opening, findings);
    measure.advice = std::move(advice.words);
    measure.about.mend = std::move(advice.mend);
    const std::string table = fmt::format("opening.{}", opening->number + 1);
    measure.about.keys.insert(measure.about.keys.begin(), {table + ".width", table + ".center"});
  }
  findings.at_least(*season.cover_larger_gap, std::move(measure), Grace::Inspection);
}

Subject corner_subject(const Frame& frame, int before) {
  const auto name = [&](int side) { return frame.sides()[static_cast<std::size_t>(side)].name; };
  return Subject::corner(name(before), name(frame.next(before)));
}

/// The keys that place the ends of bumpers which lie on a side; those of every end where none does.
std::vector<std::string> end_keys(const CheckedSet& s, int side) {
  std::vector<std::string> keys;
  for (std::size_t b = 0; b < s.wraps.size(); ++b) {
    const Run& run = s.wraps[b].run();
    if (run.sides.front().side == side) keys.push_back(key_of(s, b, "from"));
    if (run.sides.back().side == side) keys.push_back(key_of(s, b, "to"));
  }
  return keys.empty() ? keys_of(Subject::bumpers(), s.job) : keys;
}

}  // namespace

void check_cover_gap(const CheckedSet& s, const Season& season, Findings& findings) {
  for (std::size_t i = 0; i < s.covered_gaps.size(); ++i) {
    if (s.covered_gaps[i] <= kRounding) findings.advise(ends_collide(s, i, findings));
  }
  if (!season.cover_gap || s.bare_gaps.empty()) return;
  std::vector<std::size_t> larger;
  std::size_t widest = 0;
  for (std::size_t i = 0; i < s.bare_gaps.size(); ++i) {
    if (s.bare_gaps[i] >= season.cover_gap->value.mm() - kRounding) larger.push_back(i);
    if (s.bare_gaps[i] > s.bare_gaps[widest]) widest = i;
  }
  if (larger.size() == 1 && season.cover_larger_gap) {
    judge_larger_gap(s, season, larger.front(), findings);
  } else {
    for (const std::size_t i : larger) judge_wide_gap(s, season, i, larger.size(), findings);
  }
  if (!larger.empty()) return;
  findings.add(
      *season.cover_gap,
      {"cover-gap", between(s, widest),
       fmt::format("less than {}", findings.exact_text(season.cover_gap->value)),
       findings.measured_text(s.bare_gaps[widest], {season.cover_gap->value.mm()}), Verdict::Pass,
       "", gap_after(s, widest), narrower_than(season.cover_gap->value, findings)});
}

void check_corner_reach(const CheckedSet& s, const Season& season, Findings& findings) {
  if (!season.cover_reach) return;
  const double least = season.cover_reach->value.mm();
  const double near = season.cover_from_corner ? season.cover_from_corner->value.mm() : 0.0;
  const double short_side = season.cover_short_side ? season.cover_short_side->value.mm() : 0.0;
  bool all_pass = true, any_short = false;
  double least_run = 1e300;
  const auto sides = covered_sides(s);
  for (std::size_t i = 0; i < sides.size(); ++i) {
    const int number = static_cast<int>(i);
    const CoveredSide& side = sides[i];
    any_short |= side.length < short_side;
    const double needs = side.length < short_side ? side.length - 2 * near : least;
    for (const bool left : {true, false}) {
      const int before = left ? s.frame.previous(number) : number;
      if (s.frame.turn_after(before) <= Angle()) continue;  // an inside corner
      const Reach reach = reach_of(side, left, near);
      least_run = std::min(least_run, reach.runs);
      CheckResult j{
          "corner-reach",
          fmt::format("{} side at the {}", side.name, corner_name(s.frame, before)),
          side.length < short_side
              ? fmt::format("the whole side: it is shorter than {}",
                            findings.exact_text(season.cover_short_side->value))
              : fmt::format("{} of bumper", findings.exact_text(season.cover_reach->value)),
          findings.measured_text(reach.runs, {needs}),
          Verdict::Fail,
          fmt::format("lengthen the bumper by {}", findings.rounded_text(needs - reach.runs)),
          {{Subject::side(side.name), corner_subject(s.frame, before)}, end_keys(s, number)},
          findings.at_least_of(mm(needs), Grace::None)};
      if (reach.begins > near + kRounding) {
        j.required += fmt::format(", at most {} from the corner", findings.rounded_text(near));
        j.limit = {};  // two things are asked: one measure does not tell
        j.measured =
            fmt::format("begins {} from the corner", findings.measured_text(reach.begins, {near}));
        j.advice = fmt::format("bring the bumper {} nearer to the corner",
                               findings.rounded_text(reach.begins - near));
      } else if (reach.runs >= needs - kRounding) {
        continue;
      } else if (const auto opening = opening_beside(s, number, needs)) {
        OpeningAdvice advice = narrower(*opening, findings);
        j.advice = std::move(advice.words);
        j.about.mend = std::move(advice.mend);
        const std::string table = fmt::format("opening.{}", opening->number + 1);
        j.about.keys.insert(j.about.keys.begin(), {table + ".width", table + ".center"});
      }
      all_pass = false;
      findings.add(*season.cover_reach, j);
    }
  }
  if (!all_pass) return;
  // Where a short side is covered whole, one measure does not tell.
  const Limit limit = any_short ? Limit() : findings.at_least_of(mm(least), Grace::None);
  findings.add(*season.cover_reach,
               {"corner-reach",
                "each side of each outside corner",
                fmt::format("at least {}, or all of a short side",
                            findings.exact_text(season.cover_reach->value)),
                fmt::format("at least {}", findings.measured_text(least_run, {least})),
                Verdict::Pass,
                "",
                {{Subject::bumpers()}, keys_of(Subject::bumpers(), s.job)},
                limit});
}

}  // namespace swathe
