#include "support/patterns.hpp"

#include <doctest/doctest.h>

#include "support/jobs.hpp"

namespace swathe::test {

Pattern pattern_of(const Job& job, std::size_t bumper) {
  const auto pattern = make_pattern(wraps_of(job)[bumper], job);
  REQUIRE(pattern.has_value());
  return *pattern;
}

std::vector<Pattern> patterns_of(const Job& job) {
  std::vector<Pattern> patterns;
  for (const Wrap& wrap : wraps_of(job)) {
    const auto pattern = make_pattern(wrap, job);
    REQUIRE(pattern.has_value());
    patterns.push_back(*pattern);
  }
  return patterns;
}

}  // namespace swathe::test
