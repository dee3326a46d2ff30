// Time against the number of sides: a regular frame of 3 to 16 sides, each as long as the next,
// covered by one long wrap. The pass and the sheets should take time in proportion.
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <cmath>
#include <numbers>
#include <string>

#include "example.hpp"
#include "swathe/write.hpp"

namespace {

using namespace swathe;
using namespace swathe::bench;

constexpr double kSide = 500.0;  // mm

std::string regular_job(int sides) {
  const double radius = 0.5 * kSide / std::sin(std::numbers::pi / sides);
  std::string corners, names;
  for (int k = 0; k < sides; ++k) {
    const double bearing = 2 * std::numbers::pi * k / sides;
    const char* comma = k > 0 ? ", " : "";
    corners += fmt::format("{}[{:.3f}, {:.3f}]", comma, radius * std::cos(bearing),
                           radius * std::sin(bearing));
    names += fmt::format("{}\"{}\"", comma, static_cast<char>('a' + k));
  }
  return fmt::format(
      "[job]\ntitle = \"regular\"\nseason = \"none\"\nunits = \"mm\"\n"
      "[frame]\ncorners = [{}]\nsides = [{}]\n"
      "[boards]\njoint = \"mitred\"\n[padding]\ncorner = \"mitred\"\n"
      "[[bumper]]\nname = \"A\"\nfrom = [\"a\", \"60%\"]\nto = [\"a\", \"40%\"]\n",
      corners, names);
}

void BM_PassBySides(benchmark::State& state) {
  const std::string job = regular_job(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(make_job(job));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(BM_PassBySides)->DenseRange(3, 16)->Unit(benchmark::kMillisecond)->Complexity();

void BM_SheetsBySides(benchmark::State& state) {
  const Made made = make_job(regular_job(static_cast<int>(state.range(0))));
  const Font font = labels();
  for (auto _ : state) benchmark::DoNotOptimize(all_sheets(made, font));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(BM_SheetsBySides)->DenseRange(3, 16)->Unit(benchmark::kMillisecond)->Complexity();

}  // namespace
