#include <fmt/format.h>

#include <cmath>

#include "check/checks.hpp"
#include "rules/weight.hpp"

namespace swathe {
namespace {

/// ", not counting 4 brackets" for those whose mass the job does not give, or nothing.
std::string not_weighed(const Stock& stock) {
  const int count = stock.set.unknown_brackets;
  return count == 0 ? "" : fmt::format(", not counting {} bracket{}", count, count == 1 ? "" : "s");
}

Limit at_most_grams(double most) { return {Limit::Of::Mass, std::nullopt, most}; }

void judge_set_weight(const CheckedSet& s, const Season& season, Findings& findings) {
  const Units units = s.job.units;
  const double limit = season.weight_set->value.grams, has = s.stock->set.together_g();
  const bool over = has > limit;
  const std::string off = weight_words(std::abs(has - limit), units);
  findings.add(
      *season.weight_set,
      {"weight",
       "one set of bumpers",
       "at most " + weight_words(limit, units),
       weight_words(has, units) + not_weighed(*s.stock),
       over ? Verdict::Fail : Verdict::Unknown,
       over ? fmt::format(
                  "take lighter boards or padding: by the job's densities it is {} too much", off)
            : fmt::format("put a finished set on a scale: by the job's densities {} are left", off),
       {{Subject::bumpers()}, {"boards.density", "padding.density", "cloth.density"}},
       at_most_grams(limit)});
}

}  // namespace

// What no drawing can show.
void check_by_eye(const CheckedSet&, const Season& season, Findings& findings) {
  if (season.fastening_rigid && season.fastening_rigid->value) {
    findings.add(*season.fastening_rigid,
                 {"fastening",
                  "bumpers on the frame",
                  "rigid",
                  "not in the job",
                  Verdict::Unknown,
                  "use bolts, pins or clamps: no tape, hook-and-loop or cable ties",
                  {{Subject::bumpers()}}});
  }
  if (season.cloth_plain && season.cloth_plain->value) {
    findings.add(*season.cloth_plain,
                 {"markings",
                  "covers",
                  "no mark that stands out but the number",
                  "not in the job",
                  Verdict::Unknown,
                  "keep chalk, tape, labels and contrasting thread off the outside",
                  {{Subject::cloth()}}});
  }
  if (season.cloth_one_color && season.cloth_one_color->value) {
    findings.add(*season.cloth_one_color,
                 {"markings",
                  "covers",
                  "one color all over",
                  "one cloth for each cover",
                  Verdict::Unknown,
                  "take cloth with no print, and mend it with the same cloth",
                  {{Subject::cloth()}, {"cloth.colors"}}});
  }
}

void check_weight(const CheckedSet& s, const Season& season, Findings& findings) {
  if (!s.stock) return;
  if (season.weight_set) judge_set_weight(s, season, findings);
  if (season.weight_machine) {
    const Units units = s.job.units;
    findings.add(*season.weight_machine,
                 {"weight",
                  "machine with bumpers",
                  "at most " + weight_words(season.weight_machine->value.grams, units),
                  "one set weighs about " + weight_words(s.stock->set.together_g(), units) +
                      not_weighed(*s.stock),
                  Verdict::Unknown,
                  "put the machine on a scale with its bumpers on",
                  {{Subject::bumpers()}},
                  at_most_grams(season.weight_machine->value.grams)});
  }
}

}  // namespace swathe
