// Time of a lay of covers on a roll, along and across, none alike.
#include <benchmark/benchmark.h>

#include <string>

#include "swathe/stock.hpp"

namespace {

using namespace swathe;

/// A cover as the tool draws it, straight, of a 5 in board and two 2 1/2 in noodles: millimeters.
Pattern cover(int number) {
  const double length = 500 + (number * 137) % 700, ears = 63.5, tongue = 140;
  Pattern pattern;
  pattern.bumper = "A" + std::to_string(number);
  const auto end = [&](double x, double out) {
    const plane::Polygon points = {{x, -183},
                                   {x, -132},
                                   {x + out * ears, -132},
                                   {x + out * ears, -32},
                                   {x + out * tongue, -32},
                                   {x + out * tongue, 32},
                                   {x + out * ears, 32},
                                   {x + out * ears, 132},
                                   {x, 132},
                                   {x, 183}};
    return points;
  };
  const plane::Polygon left = end(0, -1);
  pattern.outline = end(length, 1);
  pattern.outline.insert(pattern.outline.end(), left.rbegin(), left.rend());
  return pattern;
}

void lay(benchmark::State& state) {
  std::vector<Pattern> covers;
  for (int number = 0; number < state.range(0); ++number) covers.push_back(cover(number));
  ClothKeys cloth;
  cloth.may_lie_across = true;
  cloth.roll_width = mm(static_cast<double>(state.range(1)));
  for (auto _ : state) benchmark::DoNotOptimize(lay_cloth(covers, {}, cloth, "red"));
}

}  // namespace

BENCHMARK(lay)->ArgsProduct({{2, 4, 8, 32}, {800, 1473}})->Unit(benchmark::kMillisecond);
