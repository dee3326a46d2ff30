#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "rules/practice.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

bool any_placed(const CheckedSet& s) { return s.numerals && !s.numerals->placed.empty(); }

/// Strokes as they will stand on the cloth: less the bridges where there are any.
const type::Stroke& stroke_of(const Digit& digit) {
  return digit.bridges.empty() ? digit.stroke : digit.stroke_after_bridges;
}

CheckResult judge_stroke(const Digit& digit, const Numerals& numerals, Length limit,
                         const Findings& findings) {
  const type::Stroke& stroke = stroke_of(digit);
  CheckResult j{
      "numeral-stroke",
      fmt::format("digit {}", digit.digit),
      fmt::format("at least {} wide for more than half of the stroke", findings.exact_text(limit)),
      "not measured",
      Verdict::Unknown,
      "measure the stroke on the stencil",
      {{Subject::digit(digit.digit)},
       {"numerals.font", "numerals.axes", "numerals.height", "numerals.make_legal"}},
      findings.at_least_of(limit, Grace::None)};
  if (!(stroke.length() > 0)) return j;
  const double share = stroke.share_at_least(limit.mm() - kRounding);
  const double larger = numerals.height * limit.mm() / std::max(stroke.median(), kRounding);
  j.measured = fmt::format("{} % of it, mostly {}", plain_number(100 * share, 0),
                           findings.measured_text(stroke.median(), {limit.mm()}));
  j.verdict = share > 0.5 ? Verdict::Pass : Verdict::Fail;
  j.advice = fmt::format("take a bolder or wider font, or make the digits about {} high",
                         findings.rounded_text(larger));
  return j;
}

/// The widest space between two digits of a number, over the gap of a split one too.
double widest_space(const PlacedNumeral& numeral) {
  return std::max(numeral.largest_space, numeral.space_across);
}

void judge_widest_space(const CheckedSet& s, const Season& season, Findings& findings) {
  const auto widest = std::ranges::max_element(s.numerals->placed, {}, widest_space);
  const bool over_gap = widest->space_across > widest->largest_space;
  findings.at_most(
      *season.numerals_spacing,
      {"numeral-spacing",
       fmt::format("{} numeral, edge to edge{}", widest->side, over_gap ? " across the gap" : ""),
       widest_space(*widest),
       over_gap ? "bring the bumpers' ends closer together, or put the whole number on one "
                  "side of the gap"
                : "set numerals.spacing closer: digits far apart may look like two numbers",
       {{Subject::numeral(widest->place)}, {"numerals.spacing"}}},
      Grace::None);
}

/// A number in two parts, where the season has or has not a word on it.
void judge_split(const CheckedSet& s, const Season& season, Findings& findings) {
  const auto part =
      std::ranges::find_if(s.numerals->placed, [](const PlacedNumeral& p) { return !p.whole; });
  CheckResult j{"numeral-spacing",
                fmt::format("{} numeral, split across the gap", part->side),
                "allowed",
                fmt::format("split after the {}", part->text),
                Verdict::Pass,
                "",
                {{Subject::numeral(part->place)}, keys_of(Subject::numeral(part->place), s.job)}};
  if (season.numerals_split) {
    if (!season.numerals_split->value) {
      j.required = "not split";
      j.verdict = Verdict::Fail;
      j.advice = "put the whole number on one bumper";
    }
    findings.add(*season.numerals_split, j);
  } else if (!season.numerals_spacing) {
    j.required = "the season's manual does not say";
    j.verdict = Verdict::Warn;
    j.advice = "ask the inspector, or put the whole number on one bumper";
    findings.advise(j);
  }
}

/// Digits so close that they run together from afar.
void judge_least_space(const CheckedSet& s, Findings& findings) {
  const PlacedNumeral* closest = nullptr;
  for (const PlacedNumeral& p : s.numerals->placed) {
    if (p.text.size() < 2) continue;
    if (!closest || p.least_space < closest->least_space - kRounding) closest = &p;
  }
  if (!closest) return;
  const double least = practice::kLeastSpace * s.numerals->height;
  const double more = least - closest->least_space + s.job.numerals.spacing.extra.mm();
  const Length step = s.job.units == Units::Inches ? inches(1.0 / 16) : mm(1);
  const Length extra = std::ceil(mm(more) / step - 1e-6) * step;
  const Findings::Held held = findings.held_texts(closest->least_space, least);
  findings.advise({"numeral-spacing",
                   fmt::format("{} numeral, closest digits, edge to edge", closest->side),
                   fmt::format("at least {}: about 1/7 of the height", held.limit),
                   held.measured,
                   closest->least_space >= least - kRounding ? Verdict::Pass : Verdict::Warn,
                   fmt::format("set numerals.spacing to {}: digits so close run together from afar",
                               findings.exact_text(extra)),
                   {{Subject::numeral(closest->place)},
                    {"numerals.spacing"},
                    s.job.numerals.spacing.tabular
                        ? std::vector<KeyChange>()
                        : std::vector<KeyChange>{{"numerals.spacing", findings.value(extra)}}}});
}

}  // namespace

void check_numeral_height(const CheckedSet& s, const Season& season, Findings& findings) {
  if (!season.numerals_height || !any_placed(s)) return;
  const auto lowest = std::ranges::min_element(s.numerals->placed, {}, &PlacedNumeral::height);
  const Length enough = season.numerals_height->value + inches(1.0 / 8);
  findings.at_least(*season.numerals_height,
                    {"numeral-height",
                     "shortest digit, along the cloth",
                     lowest->height,
                     fmt::format("set numerals.height to {}", findings.exact_text(enough)),
                     {{Subject::numeral(lowest->place)},
                      {"numerals.height"},
                      {{"numerals.height", findings.value(enough)}}}},
                    Grace::None);
}

// Every digit that falls short; where none does, the one that comes nearest to it.
void check_numeral_stroke(const CheckedSet& s, const Season& season, Findings& findings) {
  if (!season.numerals_stroke || !any_placed(s)) return;
  const Length limit = season.numerals_stroke->value;
  const Digit* thinnest = nullptr;
  bool all_pass = true;
  const auto share = [&](const Digit& digit) {
    return stroke_of(digit).share_at_least(limit.mm());
  };
  for (const Digit& digit : s.numerals->digits) {
    const CheckResult judged = judge_stroke(digit, *s.numerals, limit, findings);
    if (judged.verdict != Verdict::Pass) {
      all_pass = false;
      findings.add(*season.numerals_stroke, judged);
    } else if (!thinnest || share(digit) < share(*thinnest)) {
      thinnest = &digit;
    }
  }
  if (all_pass && thinnest) {
    findings.add(*season.numerals_stroke, judge_stroke(*thinnest, *s.numerals, limit, findings));
  }
}

void check_numeral_corner(const CheckedSet& s, const Season& season, Findings& findings) {
  if (!season.numerals_corner || !any_placed(s)) return;
  const double limit_deg = season.numerals_corner->value.degrees();
  const std::string required = limit_deg >= 180 ? std::string("round no corner")
                                                : fmt::format("round no corner sharper than {} deg",
                                                              plain_number(limit_deg, 1));
  bool all_pass = true, round_one = false;
  for (const PlacedNumeral& numeral : s.numerals->placed) {
    for (const RunCorner& corner :
         s.wraps[static_cast<std::size_t>(numeral.bumper)].run().corners) {
      if (std::abs(corner.s - numeral.center_s) >= 0.5 * numeral.width) continue;
      round_one = true;
      const double inside_deg = 180.0 - Angle::from_radians(corner.turn).degrees();
      if (inside_deg >= limit_deg - 1e-6) continue;
      all_pass = false;
      findings.add(
          *season.numerals_corner,
          {"numeral-corner",
           fmt::format("{} numeral", numeral.side),
           required,
           fmt::format("round a corner of {} deg", plain_number(inside_deg, 1)),
           Verdict::Fail,
           "move the number on to one side, or take a narrower font",
           {{Subject::numeral(numeral.place)}, keys_of(Subject::numeral(numeral.place), s.job)}});
    }
  }
  if (!all_pass) return;
  findings.add(*season.numerals_corner,
               {"numeral-corner",
                "numerals",
                required,
                round_one ? "round corners that are allowed" : "each on one side",
                Verdict::Pass,
                "",
                {{Subject::numerals()}, {"numerals.sides"}}});
}

void check_numeral_spacing(const CheckedSet& s, const Season& season, Findings& findings) {
  if (!any_placed(s)) return;
  if (season.numerals_spacing) judge_widest_space(s, season, findings);
  if (std::ranges::any_of(s.numerals->placed, [](const PlacedNumeral& p) { return !p.whole; }))
    judge_split(s, season, findings);
  judge_least_space(s, findings);
}

}  // namespace swathe
