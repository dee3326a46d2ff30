#pragma once

#include <cstddef>
#include <vector>

#include "swathe/job.hpp"
#include "swathe/pattern.hpp"

namespace swathe::test {

/// The pattern of one of a job's bumpers, which can be laid flat.
Pattern pattern_of(const Job& job, std::size_t bumper = 0);

/// Those of all of them.
std::vector<Pattern> patterns_of(const Job& job);

}  // namespace swathe::test
