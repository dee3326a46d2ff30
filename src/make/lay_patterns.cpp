#include "make/lay_patterns.hpp"

#include <algorithm>
#include <utility>

#include "make/count_sheets.hpp"
#include "pattern/joins.hpp"

namespace swathe {
namespace {

/// Whether a bumper's end and the next one's start stand one against the other's back.
bool meets_at_corner(const std::vector<Wrap>& wraps, std::size_t bumper) {
  const Frame& frame = wraps[bumper].frame();
  const RunSide& end = wraps[bumper].run().sides.back();
  const double corner = frame.sides()[static_cast<std::size_t>(end.side)].length_mm;
  return std::ranges::any_of(wraps, [&](const Wrap& other) {
    const RunSide& start = other.run().sides.front();
    return start.side == frame.next(end.side) && (end.to_x > corner || start.from_x < 0.0);
  });
}

}  // namespace

Staged<std::vector<Pattern>> lay_patterns(const JobReading& reading,
                                          const std::vector<Wrap>& wraps) {
  std::vector<Pattern> patterns;
  Refusals faults;
  for (const Wrap& wrap : wraps)
    if (auto pattern = take(make_pattern(wrap, reading.job), faults))
      patterns.push_back(std::move(*pattern));
  // Where a bumper is at fault its brackets lie on none.
  if (faults.empty() && wraps.size() == reading.job.bumpers.size())
    faults = faults_of_brackets(wraps, reading.job);
  if (reading.sound("paper")) {
    const Refusals many = too_many_sheets(reading.job, patterns);
    faults.insert(faults.end(), many.begin(), many.end());
  }
  return {std::move(patterns), std::move(faults)};
}

std::vector<double> covered_gaps(const std::vector<double>& bare_gaps,
                                 const std::vector<Wrap>& wraps, const Section& section) {
  std::vector<double> covered;
  for (std::size_t k = 0; k < wraps.size(); ++k) {
    // On a back, the tongue lies over one flap: both flaps end before its middle.
    const int layers = meets_at_corner(wraps, k) ? kEndLayers + 2 : 2 * kEndLayers;
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
