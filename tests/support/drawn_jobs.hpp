#pragma once

#include <optional>
#include <random>
#include <vector>

#include "support/drawn.hpp"
#include "swathe/pattern.hpp"

namespace swathe::test {

/// A job of one kind or another on a drawn frame: two halves, one bumper a side, or one long wrap.
/// Some drawn jobs are refused; those that stand must hold every promise.
Job drawn_job(std::mt19937_64& rng);

/// One straight bumper a side of a drawn frame with four sides, each from corner to corner; those
/// on every other side run past their neighbors.
Job drawn_one_a_side(std::mt19937_64& rng);

/// Frame, section and wraps of a job; nothing where any of them is refused.
struct Stood {
  std::vector<Wrap> wraps;
  std::vector<Pattern> patterns;
  std::vector<double> gaps;
};
std::optional<Stood> stand(const Job& job);

}  // namespace swathe::test
