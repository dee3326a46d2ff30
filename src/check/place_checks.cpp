#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "check/plan.hpp"
#include "swathe/base/units.hpp"
#include "swathe/job/keys_of.hpp"

namespace swathe {
namespace {

constexpr double kAbout = 15.0;    // deg: "about 90" is 75 or more
constexpr double kRoughly = 30.0;  // deg: 60 or more an inspector may still take
constexpr double kUnread = 135.0;  // deg between faces, beyond which a quarter reads neither
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

/// Whether anybody reads the number there, from any of the circles; hidden all round it is no
/// place.
bool reads(const CheckedSet& s, const PlacedNumeral& numeral) {
  if (s.sight == nullptr) return true;
  const auto serves = [&](const SightRing& ring) {
    return !ring.numbers[static_cast<std::size_t>(numeral.showing)].arcs_deg.empty();
  };
  return std::ranges::any_of(s.sight->rings, serves) ||
         std::ranges::any_of(s.sight->demanded, serves);
}

/// "unread from 45 to 135 deg": the widest stretch that reads nothing, at the season's distance.
std::string widest_unread(const Sight& sight) {
  const SightArc* widest = nullptr;
  for (const SightRing& ring : sight.demanded)
    for (const SightArc& arc : ring.arcs)
      if (arc.reads != Reads::Number &&
          (!widest || arc.to_deg - arc.from_deg > widest->to_deg - widest->from_deg))
        widest = &arc;
  if (widest == nullptr) return "";
  return fmt::format("; unread from {} deg", arc_words(widest->from_deg, widest->to_deg));
}

/// The faces that carry a number that reads.
struct Faces {
  std::vector<double> bearings;  ///< deg, rising, each once
  std::string names;             ///< "front, left, back"
};

Faces faces_of(const CheckedSet& s) {
  Faces faces;
  std::vector<std::string> seen;
  for (const PlacedNumeral& numeral : s.numerals->placed) {
    if (!reads(s, numeral)) continue;
    if (std::ranges::find(seen, numeral.side) != seen.end()) continue;
    seen.push_back(numeral.side);
    faces.names += (faces.names.empty() ? "" : ", ") + numeral.side;
    const auto side = s.frame.side(numeral.side);
    if (!side) continue;
    const double bearing = bearing_of(s.frame, *side);
    const auto same = [&](double other) { return std::abs(other - bearing) < kSame; };
    if (std::ranges::none_of(faces.bearings, same)) faces.bearings.push_back(bearing);
  }
  std::ranges::sort(faces.bearings);
  return faces;
}

void count_places(const Season& season, const Faces& faces, Book& book) {
  const int needed = season.numerals_places->value;
  const double apart =
      season.numerals_places_apart ? season.numerals_places_apart->value.degrees() : 0.0;
  const int well = most_apart(faces.bearings, std::max(0.0, apart - kAbout));
  const int roughly = most_apart(faces.bearings, std::max(0.0, apart - kRoughly));
  Judged j{"numeral-places",
           "numerals",
           fmt::format("at least {} places", needed),
           fmt::format("{}", well),
           Verdict::Pass,
           "",
           {{Subject::numerals()}, {"numerals.sides"}}};
  if (apart > 0) j.required += fmt::format(", about {} deg apart", plain_number(apart, 1));
  if (!faces.names.empty()) j.measured += ": " + faces.names;
  if (well < needed && roughly >= needed) {
    j.verdict = Verdict::Warn;
    j.advice = "some stand closer than about that: choose other faces, or ask the inspector";
  } else if (well < needed) {
    j.verdict = Verdict::Fail;
    j.advice = fmt::format("put the number on {} more face{}", needed - well,
                           needed - well == 1 ? "" : "s");
  }
  book.add(*season.numerals_places, j);
}

void name_misfits(const CheckedSet& s, const Season& season, Book& book) {
  for (const NumeralMisfit& misfit : s.numerals->misfits) {
    Judged j{"numeral-places",
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
      j.required = fmt::format("{} of clear front", book.about(misfit.needs));
      j.measured = book.about(misfit.has);
    }
    if (season.numerals_places) {
      book.add(*season.numerals_places, j);
    } else {
      book.advise(j);
    }
  }
}

}  // namespace

void check_numeral_places(const CheckedSet& s, const Season& season, Book& book) {
  if (s.job.number.empty() && season.numerals_places) {
    book.add(*season.numerals_places,
             {"numeral-places",
              "numerals",
              fmt::format("at least {} places", season.numerals_places->value),
              "the job has no number",
              Verdict::Unknown,
              "set job.number, or see to the numerals some other way",
              {{Subject::numerals()}, {"job.number"}}});
  }
  if (s.job.number.empty() || !s.numerals) return;
  const Faces faces = faces_of(s);
  if (season.numerals_places) count_places(season, faces, book);
  name_misfits(s, season, book);
  if (faces.bearings.empty() || widest_between(faces.bearings) <= kUnread) return;
  book.advise({"numeral-places",
               "numerals",
               "",
               fmt::format("{} deg between two neighboring faces{}",
                           plain_number(widest_between(faces.bearings), 0),
                           s.sight ? widest_unread(*s.sight) : ""),
               Verdict::Warn,
               "from between them nobody reads the number: one more face would mend it",
               {{Subject::numerals()}, {"numerals.sides"}}});
}

}  // namespace swathe
