#pragma once

#include <random>

#include "support/drawn_jobs.hpp"

namespace swathe::test {

/// A drawn job with a number of one kind or another on it.
Job drawn_number(std::mt19937_64& rng);

}  // namespace swathe::test
