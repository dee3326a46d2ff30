#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "check/checks.hpp"
#include "sight/demand.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

std::string percent(double share) { return plain_number(100 * share, 0) + " %"; }

/// "135 to 160 deg": bearings, 0 ahead, counter-clockwise.
std::string words_of(const SightArc& arc) { return arc_words(arc.from_deg, arc.to_deg) + " deg"; }

/// The ring from which least can be read; of those that are alike but for rounding the first.
const SightRing& worst(const std::vector<SightRing>& rings) {
  constexpr double kAlike = 1e-6;  // of the circle
  const SightRing* worst = &rings.front();
  for (const SightRing& ring : rings)
    if (ring.fraction(Reads::Number) < worst->fraction(Reads::Number) - kAlike) worst = &ring;
  return *worst;
}

std::string from_where(const SightRing& ring, const Findings& findings) {
  return fmt::format("{} away, eyes {} above the floor", findings.distance_text(ring.distance),
                     findings.exact_text(ring.eye_height));
}

void judge_viewpoints(const Sight& sight, const Season& season, Findings& findings) {
  const RuleValue<Viewpoints>& rule = *season.numerals_viewpoints;
  const SightRing& ring = worst(sight.demanded);
  const double share = ring.fraction(Reads::Number);
  std::string required = rule.value == Viewpoints::Most ? "can be read from most viewpoints"
                                                        : "can be read from every viewpoint";
  if (season.numerals_read_from)
    required += fmt::format(", up to about {} away",
                            findings.distance_text(season.numerals_read_from->value));
  findings.add(
      rule, {"sight",
             "numerals",
             required,
             fmt::format("from {} of viewpoints, {}", percent(share), from_where(ring, findings)),
             meets(share, rule.value) ? Verdict::Pass : Verdict::Fail,
             sight.advice,
             {{Subject::numerals()}, {"numerals.sides", "numerals.height"}, sight.mend}});
}

/// The place of a number that sight looked at.
About about_number(const CheckedSet& s, std::size_t number) {
  for (const PlacedNumeral& placed : s.numerals->placed)
    if (placed.showing == static_cast<int>(number))
      return {{Subject::numeral(placed.place)}, keys_of(Subject::numeral(placed.place), s.job)};
  return {{Subject::numerals()}};
}

/// A part of the number that looks like another number, from the widest stretch of any circle.
void name_lookalike(const CheckedSet& s, Findings& findings) {
  const Sight& sight = *s.sight;
  const SightArc* widest = nullptr;
  const SightRing* on = nullptr;
  for (const auto* rings : {&sight.rings, &sight.demanded})
    for (const SightRing& ring : *rings) {
      const SightArc* const arc = ring.widest(Reads::Another, sight.step);
      if (!arc || (widest && arc->to_deg - arc->from_deg <= widest->to_deg - widest->from_deg))
        continue;
      widest = arc;
      on = &ring;
    }
  if (widest == nullptr) return;
  const std::string& side = sight.scene.numbers[static_cast<std::size_t>(widest->number)].side;
  About about = about_number(s, static_cast<std::size_t>(widest->number));
  about.mend = sight.mend;
  findings.advise({"sight", fmt::format("{} numeral", side), "the whole number, or none of it",
                   fmt::format("looks like {} from {}, {}", widest->text, words_of(*widest),
                               from_where(*on, findings)),
                   Verdict::Warn, sight.advice, std::move(about)});
}

void name_unreadable(const CheckedSet& s, Findings& findings) {
  const Sight& sight = *s.sight;
  for (std::size_t n = 0; n < sight.scene.numbers.size(); ++n) {
    const auto serves = [&](const SightRing& ring) { return !ring.numbers[n].arcs_deg.empty(); };
    if (std::ranges::any_of(sight.demanded, serves)) continue;
    const Length farthest =
        std::ranges::max(sight.demanded, {},
                         [&](const SightRing& ring) { return ring.numbers[n].farthest; })
            .numbers[n]
            .farthest;
    findings.advise(
        {"sight", fmt::format("{} numeral", sight.scene.numbers[n].side), "can be read",
         farthest > Length()
             ? fmt::format("can be read from at most {} away", findings.distance_text(farthest))
             : "cannot be read",
         Verdict::Warn, "move it, or what hides it, or make it larger: nobody can read it",
         about_number(s, n)});
  }
}

}  // namespace

void check_sight(const CheckedSet& s, const Season& season, Findings& findings) {
  if (s.sight == nullptr || s.sight->scene.numbers.empty()) return;
  if (season.numerals_viewpoints) judge_viewpoints(*s.sight, season, findings);
  name_lookalike(s, findings);
  name_unreadable(s, findings);
}

}  // namespace swathe
