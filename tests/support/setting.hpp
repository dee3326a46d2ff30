#pragma once

#include <doctest/doctest.h>

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "place/place.hpp"
#include "support/fonts.hpp"
#include "support/jobs.hpp"

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

inline Setting setting(Job job, const std::string& number, Length height = inches(3.875),
                       const std::string& font = "Anton") {
  Setting made;
  const auto set = set_number(opened(numeral_font(font)), number, height, job.numerals.spacing);
  REQUIRE(set.has_value());
  made.number = *set;
  made.wraps = wraps_of(job);
  for (const Wrap& wrap : made.wraps) {
    const auto boards =
        board_pieces(wrap.frame(), wrap.section(), wrap.run(), job.boards, job.places);
    REQUIRE(boards.has_value());
    made.boards.insert(made.boards.end(), boards->begin(), boards->end());
  }
  made.job = std::move(job);
  return made;
}

inline PlacedNumbers placed(const Setting& s) {
  auto placing = place_number(s.input());
  REQUIRE(placing.has_value());
  return *std::move(placing);
}

}  // namespace swathe::test
