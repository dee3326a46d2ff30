#pragma once

#include <doctest/doctest.h>

#include <cstdint>
#include <cstdlib>
#include <random>
#include <string>

namespace swathe::test {

/// Drawn jobs for what every job must hold.
#ifdef SWATHE_SANITIZED
inline constexpr int kDrawnJobs = 100;
#else
inline constexpr int kDrawnJobs = 1000;
#endif

/// Runs `check(rng)` for many drawn cases. SWATHE_SEED replays a seed, SWATHE_DRAWN asks for more
/// cases.
template <class Check>
void for_drawn_cases(const char* name, int cases, Check check) {
  const char* seed_text = std::getenv("SWATHE_SEED");
  const char* drawn_text = std::getenv("SWATHE_DRAWN");
  const std::uint64_t seed = seed_text ? std::stoull(seed_text) : std::random_device{}();
  if (drawn_text) cases = std::stoi(drawn_text);
  INFO("drawn cases \"" << name << "\", replay with SWATHE_SEED=" << seed);
  for (int k = 0; k < cases; ++k) {
    std::mt19937_64 rng(seed + static_cast<std::uint64_t>(k) * 0x9e3779b97f4a7c15ull);
    CAPTURE(k);
    check(rng);
  }
}

inline double drawn(std::mt19937_64& rng, double lo, double hi) {
  return std::uniform_real_distribution<double>(lo, hi)(rng);
}

}  // namespace swathe::test
