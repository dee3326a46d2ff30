// Time against the number of digits and of pages, which should be in proportion: the pass and the
// numeral sheets of the example with a number of 1 to 5 digits, and a PDF of 4 to 24 of its tiles.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <cstdlib>
#include <string>
#include <vector>

#include "example.hpp"
#include "swathe/write.hpp"

namespace {

using namespace swathe;
using namespace swathe::bench;

/// The example with another number.
Made example_with(const std::string& number) {
  std::string job = example_text();
  const std::string old = "number = \"20486\"";
  const std::size_t at = job.find(old);
  if (at == job.npos) std::abort();
  job.replace(at, old.size(), "number = \"" + number + "\"");
  return make_job(job);
}

void BM_PassByDigits(benchmark::State& state) {
  const std::string number(static_cast<std::size_t>(state.range(0)), '8');
  for (auto _ : state) benchmark::DoNotOptimize(example_with(number));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(BM_PassByDigits)->DenseRange(1, 5)->Unit(benchmark::kMillisecond)->Complexity();

void BM_SheetsByDigits(benchmark::State& state) {
  const Made made = example_with(std::string(static_cast<std::size_t>(state.range(0)), '8'));
  const Font font = labels();
  for (auto _ : state) benchmark::DoNotOptimize(all_sheets(made, font));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(BM_SheetsByDigits)->DenseRange(1, 5)->Unit(benchmark::kMillisecond)->Complexity();

void BM_PdfByPages(benchmark::State& state) {
  const Font font = labels();
  const std::vector<Sheet> sheets = all_sheets(example_with("20486"), font);
  const auto tiles = std::ranges::find(sheets, SheetKind::Tiles, &Sheet::kind);
  const auto pages = static_cast<std::size_t>(state.range(0));
  if (tiles == sheets.end() || tiles->pages.size() < pages) std::abort();
  Sheet sheet = *tiles;
  sheet.pages.resize(pages);
  for (auto _ : state) benchmark::DoNotOptimize(to_pdf(sheet, font));
  state.SetComplexityN(state.range(0));
}
BENCHMARK(BM_PdfByPages)->DenseRange(4, 24, 4)->Unit(benchmark::kMillisecond)->Complexity();

}  // namespace
