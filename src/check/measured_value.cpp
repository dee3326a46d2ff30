#include "check/measured_value.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "check/findings.hpp"
#include "rules/read_value.hpp"
#include "rules/weight.hpp"

namespace swathe {
namespace {

constexpr Length kLongest = inches(1200);
constexpr double kMostCount = 1000;

std::string lower_case(std::string_view text) {
  std::string lower(text);
  for (char& c : lower)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return lower;
}

std::string one_in_words(Limit::Of of, double value, Units units) {
  switch (of) {
    case Limit::Of::Seen:
      return value > 0 ? "yes" : "no";
    case Limit::Of::Mass:
      return weight_words(value, units);
    case Limit::Of::Count:
      return plain_number(value, 0);
    case Limit::Of::Length:
    case Limit::Of::Fills:
    case Limit::Of::Within:
      break;
  }
  return exact(mm(value), units);
}

/// By how much a value misses its limit, on which side.
struct Miss {
  double by = 0;      ///< zero or less where it is met
  std::string words;  ///< "too low", "too much"
};

Miss worse(Miss a, Miss b) { return a.by < b.by ? b : a; }

/// A heights' limit has both ends (Findings::fills, Findings::within).
Miss miss_of(const Limit& limit, const MeasuredValue& value) {
  switch (limit.of) {
    case Limit::Of::Seen:
      return {value[0] > 0 ? 0.0 : 1.0, ""};
    case Limit::Of::Fills:
      return worse({value[0] - *limit.least, "too high at the bottom"},
                   {*limit.most - value[1], "too low at the top"});
    case Limit::Of::Within:
      return worse({*limit.least - value[0], "too low at the bottom"},
                   {value[1] - *limit.most, "too high at the top"});
    case Limit::Of::Length:
    case Limit::Of::Mass:
    case Limit::Of::Count:
      break;
  }
  const bool counted = limit.of == Limit::Of::Count;
  Miss miss;
  if (limit.least)
    miss = worse(miss, {*limit.least - value[0], counted ? "too few" : "too little"});
  if (!limit.most) return miss;
  double over = value[0] - *limit.most;
  if (limit.below_most && over > -kRounding) over = std::max(over, 2 * kRounding);
  return worse(miss, {over, counted ? "too many" : "too much"});
}

/// "1/8 in too little"; of a weight and of what was only looked at, what there is to do.
std::string advice_of(const CardRow& row, const Miss& miss, Verdict verdict, Units units) {
  const Limit& limit = row.limit;
  if (limit.of == Limit::Of::Seen) return row.finding.advice;
  // "Less than" is missed by nothing that could be measured.
  if (limit.below_most && miss.by <= 2 * kRounding) return "it has to be less";
  std::string advice = fmt::format("{} {}", one_in_words(limit.of, miss.by, units), miss.words);
  if (verdict == Verdict::Warn && limit.grace > 0 && miss.by <= limit.grace + kRounding)
    advice += fmt::format("; an inspector may allow {}, but do not count on it",
                          exact(mm(limit.grace), units));
  return advice;
}

}  // namespace

std::string_view expected_of(Limit::Of of) {
  switch (of) {
    case Limit::Of::Seen:
      return "\"yes\" or \"no\"";
    case Limit::Of::Mass:
      return "a weight with its unit, like \"118 lb\" or \"53.5 kg\"";
    case Limit::Of::Count:
      return "a whole number, like 3";
    case Limit::Of::Length:
      return "a length like \"5 in\" or \"127 mm\", at most 100 ft";
    case Limit::Of::Fills:
    case Limit::Of::Within:
      break;
  }
  return "two heights, the lower first, like [\"2 1/2 in\", \"7 in\"]";
}

std::optional<double> read_measured_one(Limit::Of of, std::string_view text, Units units) {
  switch (of) {
    case Limit::Of::Seen: {
      const std::string word = lower_case(text);
      if (word != "yes" && word != "no") return std::nullopt;
      return word == "yes" ? 1.0 : 0.0;
    }
    case Limit::Of::Mass: {
      const auto mass = rule_mass(text);
      return mass ? std::optional(mass->grams) : std::nullopt;
    }
    case Limit::Of::Count: {
      const auto count = parse_number(text);
      const bool whole =
          count && *count >= 0 && *count <= kMostCount && std::floor(*count) == *count;
      return whole ? count : std::nullopt;
    }
    case Limit::Of::Length:
    case Limit::Of::Fills:
    case Limit::Of::Within:
      break;
  }
  const auto length = parse_length(text, units);
  if (!length || *length < Length() || *length > kLongest) return std::nullopt;
  return length->mm();
}

std::string measured_words(Limit::Of of, const MeasuredValue& value, Units units) {
  std::string words;
  for (const double one : value)
    words += (words.empty() ? "" : " to ") + one_in_words(of, one, units);
  return words;
}

Judged judge_measured(const CardRow& row, const MeasuredValue& value, Units units) {
  const Limit& limit = row.limit;
  assert(value.size() == (limit.of == Limit::Of::Fills || limit.of == Limit::Of::Within ? 2 : 1));
  const Miss miss = miss_of(limit, value);
  Judged judged;
  judged.verdict = miss.by <= kRounding                                    ? Verdict::Pass
                   : limit.grace > 0 && miss.by <= limit.grace + kRounding ? Verdict::Warn
                                                                           : limit.missed;
  if (judged.verdict != Verdict::Pass) judged.advice = advice_of(row, miss, judged.verdict, units);
  add_doubt(row.finding.attested, judged.verdict, judged.advice);
  return judged;
}

}  // namespace swathe
