#include "make/lay_patterns.hpp"

#include <utility>

#include "make/count_sheets.hpp"
#include "pattern/joins.hpp"

namespace swathe {

Staged<std::vector<Pattern>> lay_patterns(const JobReading& reading,
                                          const std::vector<Wrap>& wraps) {
  std::vector<Pattern> patterns;
  Refusals faults;
  for (const Wrap& wrap : wraps)
    if (auto pattern = take(make_pattern(wrap, reading.job), faults))
      patterns.push_back(std::move(*pattern));
  if (reading.sound("paper")) {
    const Refusals many = too_many_sheets(reading.job, patterns);
    faults.insert(faults.end(), many.begin(), many.end());
  }
  return {std::move(patterns), std::move(faults)};
}

std::vector<double> covered_gaps(const std::vector<double>& bare_gaps,
                                 const std::vector<Pattern>& patterns, const Section& section) {
  std::vector<double> covered;
  for (std::size_t k = 0; k < patterns.size(); ++k) {
    // The next bumper's start is cut like this one's end: every end has the same layers.
    int layers = 0;
    for (const EndOnPattern& end : patterns[k].ends) layers += end.layers;
    covered.push_back(bare_gaps[k] - layers * section.cloth_thickness_mm());
  }
  return covered;
}

Staged<std::vector<std::vector<ClothJoin>>> join_covers(
    const std::vector<Pattern>& patterns, const Job& job,
    const std::vector<PlacedNumeral>& numerals) {
  std::vector<std::vector<ClothJoin>> all;
  Refusals faults;
  for (std::size_t k = 0; k < patterns.size(); ++k) {
    std::vector<Occupied> occupied;
    for (const PlacedNumeral& numeral : numerals)
      if (numeral.bumper == static_cast<int>(k))
        occupied.push_back(
            {numeral.center_s - 0.5 * numeral.width, numeral.center_s + 0.5 * numeral.width});
    auto joins = take(lay_joins(patterns[k], job, std::move(occupied)), faults);
    all.push_back(joins ? *std::move(joins) : std::vector<ClothJoin>());
  }
  return {std::move(all), std::move(faults)};
}

}  // namespace swathe
