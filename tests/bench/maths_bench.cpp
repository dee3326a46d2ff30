// Each function of maths beside the C library's own, on arguments as drawings have them: a call's
// time and, as "ratio", how many of the library's calls it takes.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <random>
#include <vector>

#include "base/maths.hpp"

namespace {

namespace maths = swathe::maths;

struct Pair {
  double a = 0, b = 0;
};

std::vector<Pair> drawn(double least, double most) {
  std::mt19937_64 rng(20486);
  std::uniform_real_distribution<double> draw(least, most);
  std::vector<Pair> pairs(1024);
  for (Pair& pair : pairs) pair = {draw(rng), draw(rng)};
  return pairs;
}

template <class Of>
double seconds(const std::vector<Pair>& pairs, Of of) {
  const auto start = std::chrono::steady_clock::now();
  double sum = 0;
  for (const Pair& pair : pairs) sum += of(pair.a, pair.b);
  benchmark::DoNotOptimize(sum);
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

template <class Ours, class Theirs>
void measure(benchmark::State& state, double least, double most, Ours ours, Theirs theirs) {
  const std::vector<Pair> pairs = drawn(least, most);
  double of_ours = 1, of_theirs = 1;  // the least of all rounds: what nothing else held up
  for (auto _ : state) {
    const double took = seconds(pairs, ours);
    state.SetIterationTime(took);
    of_ours = std::min(of_ours, took);
    of_theirs = std::min(of_theirs, seconds(pairs, theirs));
  }
  state.counters["ns_a_call"] = 1e9 * of_ours / static_cast<double>(pairs.size());
  state.counters["ratio"] = of_ours / of_theirs;
}

void BM_maths(benchmark::State& state, double (*ours)(double), double (*theirs)(double),
              double most) {
  measure(
      state, -most, most, [&](double a, double) { return ours(a); },
      [&](double a, double) { return theirs(a); });
}
void BM_maths_two(benchmark::State& state, double (*ours)(double, double),
                  double (*theirs)(double, double)) {
  measure(state, -2000, 2000, ours, theirs);
}
void BM_maths_power(benchmark::State& state) {
  measure(
      state, 0.04, 1.0, [](double a, double) { return maths::power(a, 12, 5); },
      [](double a, double) { return std::pow(a, 2.4); });
}

BENCHMARK_CAPTURE(BM_maths, sin, maths::sin, std::sin, 7)->UseManualTime();
BENCHMARK_CAPTURE(BM_maths, cos, maths::cos, std::cos, 7)->UseManualTime();
BENCHMARK_CAPTURE(BM_maths, tan, maths::tan, std::tan, 7)->UseManualTime();
BENCHMARK_CAPTURE(BM_maths, acos, maths::acos, std::acos, 1)->UseManualTime();
BENCHMARK_CAPTURE(BM_maths, atan, maths::atan, std::atan, 5)->UseManualTime();
BENCHMARK_CAPTURE(BM_maths_two, atan2, maths::atan2, std::atan2)->UseManualTime();
BENCHMARK_CAPTURE(BM_maths_two, hypot, maths::hypot, std::hypot)->UseManualTime();
BENCHMARK(BM_maths_power)->UseManualTime();

}  // namespace
