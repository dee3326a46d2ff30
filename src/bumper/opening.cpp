#include <fmt/format.h>

#include <algorithm>

#include "swathe/bumper.hpp"

// Openings held against the frame's sides and the bumpers that stand there.
namespace swathe {
namespace {

constexpr double kTouch = 1e-6;

/// What an opening that reaches past its side may have at most, its center as it is.
std::optional<Refusal> past_side(const FrameSide& side, const AlongSide& gap,
                                 const OpeningKeys& keys, const std::string& table,
                                 const Places& places, Units units) {
  const double before = gap.from - side.own_from;
  const double after = side.own_from + side.own_length - gap.to;
  const double room = std::min(before, after);
  if (room > kTouch) return std::nullopt;
  const double most = keys.width.mm() + 2 * room;
  std::string sentence =
      fmt::format("the opening is {} wide and reaches {} past the frame: the side {} is {} long",
                  exact(keys.width, units), exact(mm(-room), units), side.name,
                  exact(mm(side.own_length), units));
  sentence += most > kTouch
                  ? fmt::format(", expected less than {} with this center", exact(mm(most), units))
                  : std::string(", expected a center on it");
  return Refusal{Why::DoesNotFit, std::move(sentence),
                 places.of(table + (most > kTouch ? ".width" : ".center"))};
}

}  // namespace

Refusals faults_of_openings(const Frame& frame, const std::vector<Run>& runs,
                            const std::vector<OpeningKeys>& openings, const Places& places,
                            Units units) {
  Refusals faults;
  for (std::size_t k = 0; k < openings.size(); ++k) {
    const auto number = frame.side(openings[k].side);
    if (!number) continue;
    const FrameSide& side = frame.sides()[static_cast<std::size_t>(*number)];
    const AlongSide gap = stretch_of(frame, *number, openings[k]);
    if (auto fault =
            past_side(side, gap, openings[k], fmt::format("opening.{}", k), places, units)) {
      faults.push_back(std::move(*fault));
      continue;
    }
    for (const Run& run : runs)
      for (const RunSide& leg : run.sides)
        if (leg.side == *number && leg.from_x < gap.to - kTouch && leg.to_x > gap.from + kTouch)
          faults.push_back(
              {Why::DoesNotFit,
               fmt::format("bumper \"{0}\" lies across the opening of side \"{1}\", expected it to "
                           "end there: to = [\"{1}\", \"opening\"], and to go on behind it: from = "
                           "[\"{1}\", \"opening\"]",
                           run.name, side.name),
               places.of(fmt::format("bumper.{}", run.keys))});
  }
  return faults;
}

}  // namespace swathe
