#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "check/plan.hpp"
#include "place/advice.hpp"
#include "place/more_sides.hpp"
#include "place/place.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

constexpr double kAbout = 15.0;    // deg: "about 90" is 75 or more
constexpr double kRoughly = 30.0;  // deg: 60 or more an inspector may still take
constexpr double kTooFar = 135.0;  // deg between sides: beyond it, neither is read from a quarter
constexpr double kSame = 1e-3;     // deg

/// Most of the bearings of which each two neighbors are at least `apart` degrees from one another.
int most_apart(const std::vector<double>& bearings, double apart) {
  int most = 0;
  for (std::size_t start = 0; start < bearings.size(); ++start) {
    int count = 1;
    double last = 0;
    for (std::size_t i = 1; i < bearings.size(); ++i) {
      const double next = bearings[(start + i) % bearings.size()];
      const double on = std::fmod(next - bearings[start] + 360.0, 360.0);
      if (on - last < apart - kSame || 360.0 - on < apart - kSame) continue;
      ++count;
      last = on;
    }
    most = std::max(most, count);
  }
  return most;
}

double widest_between(const std::vector<double>& bearings) {
  double widest = 0;
  for (std::size_t i = 0; i < bearings.size(); ++i) {
    const double next = i + 1 < bearings.size() ? bearings[i + 1] : bearings[0] + 360.0;
    widest = std::max(widest, next - bearings[i]);
  }
  return widest;
}

/// Whether anybody can read the number there, from any of the circles: where it is hidden all
/// round, it does not count as a place.
bool can_be_read(const CheckedSet& s, const PlacedNumeral& numeral) {
  if (s.sight == nullptr) return true;
  const auto serves = [&](const SightRing& ring) {
    return !ring.numbers[static_cast<std::size_t>(numeral.showing)].arcs_deg.empty();
  };
  return std::ranges::any_of(s.sight->rings, serves) ||
         std::ranges::any_of(s.sight->demanded, serves);
}

/// "; cannot be read from 45 to 135 deg": the widest stretch where that is so, at the season's
/// distance.
std::string where_unreadable(const Sight& sight) {
  const SightArc* widest = nullptr;
  for (const SightRing& ring : sight.demanded)
    for (const SightArc& arc : ring.arcs)
      if (arc.reads != Reads::Number &&
          (!widest || arc.to_deg - arc.from_deg > widest->to_deg - widest->from_deg))
        widest = &arc;
  if (widest == nullptr) return "";
  return fmt::format("; cannot be read from {} deg", arc_words(widest->from_deg, widest->to_deg));
}

/// The sides with a number that somebody can read.
struct NumberedSides {
  std::vector<double> bearings;      ///< deg, rising, each once
  std::string names;                 ///< "front, left, back"
  std::vector<std::string> showing;  ///< all with a number, whether anybody can read it or not
};

NumberedSides numbered_sides(const CheckedSet& s) {
  NumberedSides sides;
  std::vector<std::string> seen;
  for (const PlacedNumeral& numeral : s.numerals->placed) {
    if (numeral.from == 0) sides.showing.push_back(numeral.side);
    if (!can_be_read(s, numeral)) continue;
    if (std::ranges::find(seen, numeral.side) != seen.end()) continue;
    seen.push_back(numeral.side);
    sides.names += (sides.names.empty() ? "" : ", ") + numeral.side;
    const auto side = s.frame.side(numeral.side);
    if (!side) continue;
    const double bearing = bearing_of(s.frame, *side);
    const auto same = [&](double other) { return std::abs(other - bearing) < kSame; };
    if (std::ranges::none_of(sides.bearings, same)) sides.bearings.push_back(bearing);
  }
  std::ranges::sort(sides.bearings);
  return sides;
}

/// Sides that have no number and cloth for it as it is; none where something hides covers, since
/// nobody has looked at a number there.
std::vector<NumeralRoom> free_sides(const CheckedSet& s, const NumberedSides& sides) {
  if (s.numerals->placed.empty() || !s.job.sight.blind.empty()) return {};
  plane::Box ink;  // of all digits, each at its origin
  for (const Digit& digit : s.numerals->digits) ink.cover(bounds(digit.outline));
  double width = 0;
  for (const PlacedNumeral& placed : s.numerals->placed) {
    if (!placed.whole) return {};
    width = placed.width;
  }
  const std::vector<Wrap> wraps(s.wraps.begin(), s.wraps.end());
  std::vector<NumeralRoom> rooms =
      rooms_that_fit(numeral_rooms(wraps, half_band(ink.height(), s.job.numerals)),
                     needed_for(width, s.job.numerals));
  std::erase_if(rooms, [&](const NumeralRoom& room) {
    return std::ranges::find(sides.showing, room.side) != sides.showing.end();
  });
  return rooms;
}

/// Puts the number on free sides, each time on that one with which `worth` is highest, until it is
/// enough. No change where it never is.
template <class Worth>
std::vector<KeyChange> on_more_sides(const CheckedSet& s, const NumberedSides& sides, double enough,
                                     Worth worth) {
  std::vector<NumeralRoom> free = free_sides(s, sides);
  std::vector<double> bearings = sides.bearings;
  std::vector<OneMore> more;
  const auto with = [&](const NumeralRoom& room) {
    std::vector<double> all = bearings;
    all.push_back(std::fmod(room.bearing_deg + 360, 360));
    std::ranges::sort(all);
    return all;
  };
  while (worth(bearings) < enough) {
    if (free.empty()) return {};
    const auto best = std::ranges::max_element(
        free, {}, [&](const NumeralRoom& room) { return worth(with(room)); });
    bearings = with(*best);
    more.push_back({best->side, s.wraps[static_cast<std::size_t>(best->bumper)].run().name});
    free.erase(best);
  }
  return put_there_too(more, sides.showing, s.job);
}

Limit places_limit(const Season& season) {
  return {Limit::Of::Count, season.numerals_places->value};
}

void count_places(const CheckedSet& s, const Season& season, const NumberedSides& sides,
                  Findings& findings) {
  const int needed = season.numerals_places->value;
  const double apart =
      season.numerals_places_apart ? season.numerals_places_apart->value.degrees() : 0.0;
  const int well = most_apart(sides.bearings, std::max(0.0, apart - kAbout));
  const int roughly = most_apart(sides.bearings, std::max(0.0, apart - kRoughly));
  CheckResult j{"numeral-places",
                "numerals",
                fmt::format("at least {} places", needed),
                fmt::format("{}", well),
                Verdict::Pass,
                "",
                {{Subject::numerals()}, {"numerals.sides"}},
                places_limit(season)};
  if (apart > 0) j.required += fmt::format(", about {} deg apart", plain_number(apart, 1));
  if (!sides.names.empty()) j.measured += ": " + sides.names;
  if (well < needed && roughly >= needed) {
    j.verdict = Verdict::Warn;
    j.advice = "choose other sides, or ask the inspector: some are closer together than that";
  } else if (well < needed) {
    j.verdict = Verdict::Fail;
    j.advice = fmt::format("put the number on {} more side{}", needed - well,
                           needed - well == 1 ? "" : "s");
    j.about.mend = on_more_sides(s, sides, needed, [&](const std::vector<double>& bearings) {
      return static_cast<double>(most_apart(bearings, std::max(0.0, apart - kAbout)));
    });
  }
  findings.add(*season.numerals_places, j);
}

void name_misfits(const CheckedSet& s, const Season& season, Findings& findings) {
  for (const NumeralMisfit& misfit : s.numerals->misfits) {
    CheckResult j{"numeral-places",
                  fmt::format("{} numeral", misfit.side),
                  "a bumper on this side",
                  "none",
                  Verdict::Warn,
                  misfit.advice,
                  {{Subject::side(misfit.side)},
                   keys_of(Subject::numeral(misfit.place), s.job),
                   misfit.mend}};
    j.about.keys.emplace_back("numerals.height");
    if (misfit.bumper >= 0) {
      Findings::Held held = findings.held_texts(misfit.has, misfit.needs);
      j.required = fmt::format("{} of free cloth", held.limit);
      j.measured = std::move(held.measured);
    }
    if (season.numerals_places) {
      j.limit.missed = Verdict::Warn;  // what counts is how many places there are in all
      findings.add(*season.numerals_places, j);
    } else {
      findings.advise(j);
    }
  }
}

}  // namespace

void check_numeral_places(const CheckedSet& s, const Season& season, Findings& findings) {
  if (s.job.number.empty() && season.numerals_places) {
    findings.add(*season.numerals_places,
                 {"numeral-places",
                  "numerals",
                  fmt::format("at least {} places", season.numerals_places->value),
                  "the job has no number",
                  Verdict::Unknown,
                  "set job.number, or make the numerals some other way",
                  {{Subject::numerals()}, {"job.number"}},
                  places_limit(season)});
  }
  if (s.job.number.empty() || !s.numerals) return;
  const NumberedSides sides = numbered_sides(s);
  if (season.numerals_places) count_places(s, season, sides, findings);
  name_misfits(s, season, findings);
  if (sides.bearings.empty() || widest_between(sides.bearings) <= kTooFar) return;
  findings.advise(
      {"numeral-places",
       "numerals",
       fmt::format("at most {} deg between neighbors", plain_number(kTooFar, 0)),
       fmt::format("{} deg between two of them{}", plain_number(widest_between(sides.bearings), 0),
                   s.sight ? where_unreadable(*s.sight) : ""),
       Verdict::Warn,
       "put the number on one more side: nobody between these two can read it",
       {{Subject::numerals()},
        {"numerals.sides"},
        on_more_sides(s, sides, -kTooFar, [](const std::vector<double>& bearings) {
          return -widest_between(bearings);
        })}});
}

}  // namespace swathe
