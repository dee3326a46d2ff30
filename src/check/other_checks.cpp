#include <fmt/format.h>

#include <cmath>

#include "check/checks.hpp"
#include "swathe/rules/weight.hpp"

namespace swathe {
namespace {

/// " without 4 brackets", whose mass the job does not say, or nothing.
std::string not_weighed(const Stock& stock) {
  const int count = stock.set.unknown_brackets;
  return count == 0 ? "" : fmt::format(" without {} bracket{}", count, count == 1 ? "" : "s");
}

void judge_set_weight(const CheckedSet& s, const Season& season, Book& book) {
  const Units units = s.job.units;
  const double limit = season.weight_set->value.grams, has = s.stock->set.together_g();
  const bool over = has > limit;
  const std::string off = weight_words(std::abs(has - limit), units);
  book.add(
      *season.weight_set,
      {"weight",
       "one set of bumpers",
       "at most " + weight_words(limit, units),
       weight_words(has, units) + not_weighed(*s.stock),
       over ? Verdict::Fail : Verdict::Unknown,
       over
           ? fmt::format("{} too much, by the job's densities: take lighter boards or padding", off)
           : fmt::format("{} to spare, by the job's densities: put a finished set on a scale", off),
       {{Subject::bumpers()}, {"boards.density", "padding.density", "cloth.density"}}});
}

}  // namespace

// What no drawing can show.
void check_by_eye(const CheckedSet&, const Season& season, Book& book) {
  if (season.fastening_rigid && season.fastening_rigid->value) {
    book.add(*season.fastening_rigid,
             {"fastening",
              "bumpers on the frame",
              "rigid",
              "not in the job",
              Verdict::Unknown,
              "bolts, pins or clamps: no tape, hook-and-loop or cable ties",
              {{Subject::bumpers()}}});
  }
  if (season.cloth_plain && season.cloth_plain->value) {
    book.add(*season.cloth_plain,
             {"markings",
              "covers",
              "no contrasting mark but the number",
              "not in the job",
              Verdict::Unknown,
              "keep chalk, tape, labels and contrasting thread off the outside",
              {{Subject::cloth()}}});
  }
  if (season.cloth_one_color && season.cloth_one_color->value) {
    book.add(*season.cloth_one_color, {"markings",
                                       "covers",
                                       "one color throughout",
                                       "one cloth a cover",
                                       Verdict::Unknown,
                                       "see that the cloth has no pattern, and patches match it",
                                       {{Subject::cloth()}, {"cloth.colors"}}});
  }
}

void check_weight(const CheckedSet& s, const Season& season, Book& book) {
  if (!s.stock) return;
  if (season.weight_set) judge_set_weight(s, season, book);
  if (season.weight_machine) {
    const Units units = s.job.units;
    book.add(*season.weight_machine,
             {"weight",
              "machine with bumpers",
              "at most " + weight_words(season.weight_machine->value.grams, units),
              "one set weighs about " + weight_words(s.stock->set.together_g(), units) +
                  not_weighed(*s.stock),
              Verdict::Unknown,
              "put the machine on a scale with its bumpers on",
              {{Subject::bumpers()}}});
  }
}

}  // namespace swathe
