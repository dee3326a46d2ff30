#pragma once

#include <optional>
#include <string>
#include <vector>

#include "place/place.hpp"
#include "swathe/job.hpp"

namespace swathe::test {

inline constexpr double kInch = 25.4;

#ifdef SWATHE_SANITIZED
inline constexpr int kSplitCases = 40, kPlaceCases = 60;
#else
inline constexpr int kSplitCases = 300, kPlaceCases = 500;
#endif

/// All that a placing needs, kept alive together.
struct Setting {
  Job job;
  std::vector<Wrap> wraps;
  std::vector<bumper::Piece> boards;
  SetNumber number;
  std::vector<FontCandidate> candidates;
  int least_places = 3;
  bool may_split = false;
  std::optional<Length> most_space = inches(4);
  std::optional<Length> least_height = inches(3.75);
  Demand demand{};

  PlaceInput input() const {
    return {.number = number,
            .keys = job.numerals,
            .wraps = wraps,
            .least_places = least_places,
            .may_split = may_split,
            .most_space = most_space,
            .candidates = candidates,
            .least_height = least_height,
            .least_stroke = {},
            .sight = job.sight,
            .demand = demand,
            .units = job.units,
            .places = job.places};
  }
};

Setting setting(Job job, const std::string& number, Length height = inches(3.875),
                const std::string& font = "Anton");

PlacedNumbers placed(const Setting& s);

}  // namespace swathe::test
