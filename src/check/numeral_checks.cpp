#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "swathe/base/units.hpp"

namespace swathe {
namespace {

bool any_placed(const Subject& s) { return s.numerals && !s.numerals->placed.empty(); }

/// Strokes as they will stand on the cloth: less the bridges where there are any.
const Stroke& stroke_of(const Digit& digit) {
  return digit.bridges.empty() ? digit.stroke : digit.stroke_after_bridges;
}

Judged judge_stroke(const Digit& digit, const Numerals& numerals, Length limit, const Book& book) {
  const Stroke& stroke = stroke_of(digit);
  Judged j{"numeral-stroke",
           fmt::format("digit {}", digit.digit),
           fmt::format("at least {} for more than half of the stroke", book.exactly(limit)),
           "not measured",
           Verdict::Unknown,
           "measure the stroke on the stencil"};
  if (!(stroke.length() > 0)) return j;
  const double share = stroke.share_at_least(limit.mm() - kNoTape);
  const double larger = numerals.height * limit.mm() / std::max(stroke.median(), kNoTape);
  j.measured = fmt::format("{} % of it, median {}", plain_number(100 * share, 0),
                           book.about(stroke.median()));
  j.verdict = share > 0.5 ? Verdict::Pass : Verdict::Fail;
  j.advice = fmt::format("take a bolder or wider face, or make the digits about {} high",
                         book.on_tape(larger));
  return j;
}

}  // namespace

void check_numeral_height(const Subject& s, const Season& season, Book& book) {
  if (!season.numerals_height || !any_placed(s)) return;
  const auto lowest = std::ranges::min_element(s.numerals->placed, {}, &PlacedNumeral::height);
  const Length enough = season.numerals_height->value + inches(1.0 / 8);
  book.at_least(*season.numerals_height,
                {"numeral-height", "shortest digit, along the cloth", lowest->height,
                 fmt::format("set numerals.height to {}", book.exactly(enough))},
                Grace::None);
}

// Every digit that falls short; where none does, the one that comes nearest to it.
void check_numeral_stroke(const Subject& s, const Season& season, Book& book) {
  if (!season.numerals_stroke || !any_placed(s)) return;
  const Length limit = season.numerals_stroke->value;
  const Digit* thinnest = nullptr;
  bool all_pass = true;
  const auto share = [&](const Digit& digit) {
    return stroke_of(digit).share_at_least(limit.mm());
  };
  for (const Digit& digit : s.numerals->digits) {
    const Judged judged = judge_stroke(digit, *s.numerals, limit, book);
    if (judged.verdict != Verdict::Pass) {
      all_pass = false;
      book.add(*season.numerals_stroke, judged);
    } else if (!thinnest || share(digit) < share(*thinnest)) {
      thinnest = &digit;
    }
  }
  if (all_pass && thinnest) {
    book.add(*season.numerals_stroke, judge_stroke(*thinnest, *s.numerals, limit, book));
  }
}

void check_numeral_corner(const Subject& s, const Season& season, Book& book) {
  if (!season.numerals_corner || !any_placed(s)) return;
  const double limit_deg = season.numerals_corner->value.degrees();
  const std::string required =
      limit_deg >= 180
          ? std::string("round no corner")
          : fmt::format("round no corner sharper than {} deg inside", plain_number(limit_deg, 1));
  bool all_pass = true, round_one = false;
  for (const PlacedNumeral& numeral : s.numerals->placed) {
    for (const RunCorner& corner :
         s.wraps[static_cast<std::size_t>(numeral.bumper)].run().corners) {
      if (std::abs(corner.s - numeral.centre_s) >= 0.5 * numeral.width) continue;
      round_one = true;
      const double inside_deg = 180.0 - Angle::from_radians(corner.turn).degrees();
      if (inside_deg >= limit_deg - 1e-6) continue;
      all_pass = false;
      book.add(*season.numerals_corner,
               {"numeral-corner", fmt::format("{} numeral", numeral.side), required,
                fmt::format("round a corner of {} deg", plain_number(inside_deg, 1)), Verdict::Fail,
                "move the number on to one side, or take a narrower face"});
    }
  }
  if (!all_pass) return;
  book.add(*season.numerals_corner,
           {"numeral-corner", "numerals", required,
            round_one ? "round corners no sharper" : "each on one side", Verdict::Pass, ""});
}

void check_numeral_spacing(const Subject& s, const Season& season, Book& book) {
  if (!season.numerals_spacing || !any_placed(s)) return;
  const auto widest =
      std::ranges::max_element(s.numerals->placed, {}, &PlacedNumeral::largest_space);
  book.at_most(*season.numerals_spacing,
               {"numeral-spacing", fmt::format("{} numeral, ink to ink", widest->side),
                widest->largest_space,
                "set numerals.spacing closer: digits far apart may read as two numbers"},
               Grace::None);
}

}  // namespace swathe
