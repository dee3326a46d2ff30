#pragma once

#include <optional>
#include <vector>

#include "swathe/rules.hpp"
#include "swathe/sight.hpp"

namespace swathe {

/// What a season asks of an observer's circle.
struct Demand {
  std::optional<Viewpoints> viewpoints;  ///< unset: it asks for none
  std::optional<Length> distance;        ///< that it names
};
Demand demand_of(const Season* season);

/// The share of the circle from which one must be able to read the number: more than half for
/// "most"; for "every" all of it, but for stretches too small for anybody to stand in.
inline constexpr double kMost = 0.5, kEvery = 0.9995;

/// The share of viewpoints from which the number can be read, at the eye height that is worst.
double least_fraction(const std::vector<SightRing>& rings);
bool meets(double fraction, Viewpoints viewpoints);

}  // namespace swathe
