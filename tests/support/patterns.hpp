#pragma once

#include <doctest/doctest.h>

#include <cstddef>
#include <vector>

#include "support/jobs.hpp"
#include "swathe/pattern.hpp"

namespace swathe::test {

/// The pattern of one of a job's bumpers, which can be laid flat.
inline Pattern pattern_of(const Job& job, std::size_t bumper = 0) {
  const auto pattern = make_pattern(wraps_of(job)[bumper], job);
  REQUIRE(pattern.has_value());
  return *pattern;
}

/// Those of all of them.
inline std::vector<Pattern> patterns_of(const Job& job) {
  std::vector<Pattern> patterns;
  for (const Wrap& wrap : wraps_of(job)) {
    const auto pattern = make_pattern(wrap, job);
    REQUIRE(pattern.has_value());
    patterns.push_back(*pattern);
  }
  return patterns;
}

}  // namespace swathe::test
