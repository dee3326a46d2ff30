#include "make/set_number.hpp"

#include <algorithm>
#include <utility>

#include "place/make_numerals.hpp"
#include "place/sight_advice.hpp"
#include "rules/practice.hpp"
#include "sight/demand.hpp"

namespace swathe {
namespace {

NumeralRules numeral_rules(const std::optional<Season>& season) {
  NumeralRules rules;
  rules.space = practice::kReadsAsTwo;
  rules.may_split = !season;
  if (!season) return rules;
  // A rule on the space between digits lets them stand that far apart.
  rules.may_split =
      season->numerals_split ? season->numerals_split->value : season->numerals_spacing.has_value();
  if (season->numerals_spacing) rules.space = season->numerals_spacing->value;
  if (season->numerals_height) rules.height = season->numerals_height->value;
  if (season->numerals_stroke) rules.stroke = season->numerals_stroke->value;
  if (season->numerals_places) rules.places = season->numerals_places->value;
  return rules;
}

Outcome<Numerals> numerals_of(const Standing& stand, const Job& job, const NumeralRules& rules,
                              const OpenFont& font, const Demand& demand,
                              const MakeOptions& options) {
  const auto set = [&](const std::vector<FontCandidate>& candidates) {
    return make_numerals({font.font->font, font.name, job.number, job.numerals, stand.wraps, rules,
                          static_cast<int>(job.cloth.colors.size()), candidates, job.units,
                          job.places, job.sight, demand, options.kept});
  };
  // Other fonts are opened and measured only where the number does not fit in this one.
  auto numerals = set({});
  if (numerals && !numerals->misfits.empty() && options.advice)
    numerals = set(candidates_for(job, options.fonts));
  if (numerals && !options.advice)
    for (NumeralMisfit& misfit : numerals->misfits) {
      misfit.advice.clear();
      misfit.mend.clear();
    }
  if (numerals) numerals->axes = font.axes;
  return numerals;
}

/// Whether the numbers can be read as well as anybody asks.
bool reads_well(const Sight& sight, const Demand& demand) {
  const auto misread = [&](const SightRing& ring) {
    return ring.widest(Reads::Another, sight.step) != nullptr;
  };
  const bool met = !demand.viewpoints || meets(least_fraction(sight.demanded), *demand.viewpoints);
  return met && std::ranges::none_of(sight.rings, misread) &&
         std::ranges::none_of(sight.demanded, misread);
}

Sight sight_of(const std::vector<Wrap>& wraps, const Numerals& numerals, const Job& job,
               const Demand& demand, const MakeOptions& options) {
  const std::vector<SightNumber> numbers = numbers_to_see(numerals);
  Sight sight = sweep(make_scene(wraps, numbers, job.sight.blind), job.sight, demand.distance);
  if (!options.advice || reads_well(sight, demand)) return sight;
  std::vector<int> places(numbers.size());
  for (const PlacedNumeral& placed : numerals.placed)
    places[static_cast<std::size_t>(placed.showing)] = placed.place;
  Advice advice = sight_advice(wraps, numbers, places, job, demand);
  sight.advice = std::move(advice.words);
  sight.mend = std::move(advice.mend);
  return sight;
}

}  // namespace

Outcome<Numbered> set_number_on(const Standing& stand, const Job& job,
                                const std::optional<Season>& season, const OpenFont& font,
                                const MakeOptions& options) {
  Numbered numbered;
  double half_height = stand.section->front_flat_top();
  if (font.font) {
    const NumeralRules rules = numeral_rules(season);
    half_height = 0.5 * numeral_height(job.numerals, rules).mm();
    const Demand demand = demand_of(season ? &*season : nullptr);
    auto numerals = numerals_of(stand, job, rules, font, demand, options);
    if (!numerals) return tl::unexpected(std::move(numerals.error()));
    numbered.numerals = std::move(*numerals);
    numbered.sight = sight_of(stand.wraps, *numbered.numerals, job, demand, options);
  }
  for (const Wrap& wrap : stand.wraps) numbered.clear.push_back(clear_stretches(wrap, half_height));
  return numbered;
}

KeptDigits kept_digits(const Made& made) {
  const NumeralKeys& keys = made.job.numerals;
  return {keys.method, keys.bridge, keys.outline,
          made.numerals ? made.numerals->digits : std::vector<Digit>()};
}

std::vector<PlacedNumeral> on_patterns(const std::optional<Numerals>& numerals,
                                       const ClothMap& map) {
  std::vector<PlacedNumeral> laid;
  if (!numerals) return laid;
  for (const PlacedNumeral& placed : numerals->placed) laid.push_back(on_pattern(placed, map));
  return laid;
}

}  // namespace swathe
