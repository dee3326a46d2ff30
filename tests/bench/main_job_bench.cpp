// The whole main job, and its floor.
#include <benchmark/benchmark.h>

#include "cairo_floor.hpp"
#include "main_job.hpp"

namespace {

using namespace swathe::bench;

void BM_MainJob(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(main_job());
}
BENCHMARK(BM_MainJob)->Unit(benchmark::kMillisecond);

void BM_CairoFloor(benchmark::State& state) {
  const CairoLoad load = load_of_example();
  for (auto _ : state) benchmark::DoNotOptimize(cairo_floor(load));
}
BENCHMARK(BM_CairoFloor)->Unit(benchmark::kMillisecond);

}  // namespace
