#pragma once

#include <optional>
#include <vector>

#include "swathe/rules/season.hpp"
#include "swathe/sight/sweep.hpp"

namespace swathe {

/// What a season asks of an observer's circle.
struct Demand {
  std::optional<Viewpoints> viewpoints;  ///< unset: it asks for none
  std::optional<Length> distance;        ///< that it names
};
Demand demand_of(const Season* season);

/// Of the circle, from which the number must be read: more than half for "most", all but what no
/// walker could find for "every".
inline constexpr double kMost = 0.5, kEvery = 0.9995;

/// The share of viewpoints that read the number, of the eye height that reads least.
double least_fraction(const std::vector<SightRing>& rings);
bool meets(double fraction, Viewpoints viewpoints);

}  // namespace swathe
