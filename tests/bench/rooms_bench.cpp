// Each room's own work on the example, one after the other as the pass goes.
#include <benchmark/benchmark.h>

#include "check/check.hpp"
#include "example.hpp"
#include "swathe/job.hpp"
#include "swathe/make.hpp"
#include "swathe/pattern.hpp"
#include "swathe/rules.hpp"
#include "swathe/sight.hpp"
#include "swathe/stock.hpp"
#include "swathe/type.hpp"
#include "swathe/write.hpp"

namespace {

using namespace swathe;
using namespace swathe::bench;

/// Runs `work` on the example, made once.
template <class Work>
void on_example(benchmark::State& state, Work work) {
  static const Made made = made_example();
  static const Font font = labels();
  static const std::vector<Sheet> sheets = all_sheets(made, font);
  for (auto _ : state) work(made, font, sheets);
}

void BM_job(benchmark::State& state) {
  const std::string text = example_text();
  for (auto _ : state) benchmark::DoNotOptimize(read_job(text, "job.toml"));
}
BENCHMARK(BM_job)->Unit(benchmark::kMicrosecond);

void BM_rules(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(bundled_season("2026"));
}
BENCHMARK(BM_rules)->Unit(benchmark::kMicrosecond);

void BM_type(benchmark::State& state) {
  for (auto _ : state) {
    const auto font = open_bundled(*bundled_font("Anton"));
    const auto line = set_digits(*font, "20486", 104.775);
    for (const DigitOutline& shape : line->shapes)
      benchmark::DoNotOptimize(measure_stroke(shape.outline));
  }
}
BENCHMARK(BM_type)->Unit(benchmark::kMicrosecond);

void BM_bumper(benchmark::State& state) {
  on_example(state, [](const Made& made, const Font&, const std::vector<Sheet>&) {
    const auto section = Section::make(made.job.boards, made.job.padding, made.job.cloth,
                                       made.job.places, made.job.units);
    for (const Wrap& wrap : made.wraps)
      benchmark::DoNotOptimize(
          Wrap(made.frame, *section, wrap.run()).dart(wrap.run().corners.front(), 10.0));
  });
}
BENCHMARK(BM_bumper)->Unit(benchmark::kMicrosecond);

void BM_pattern(benchmark::State& state) {
  on_example(state, [](const Made& made, const Font&, const std::vector<Sheet>&) {
    for (const Wrap& wrap : made.wraps) benchmark::DoNotOptimize(make_pattern(wrap, made.job));
  });
}
BENCHMARK(BM_pattern)->Unit(benchmark::kMicrosecond);

void BM_sight(benchmark::State& state) {
  on_example(state, [](const Made& made, const Font&, const std::vector<Sheet>&) {
    benchmark::DoNotOptimize(sweep(made.sight->scene, made.job.sight));
  });
}
BENCHMARK(BM_sight)->Unit(benchmark::kMicrosecond);

void BM_stock(benchmark::State& state) {
  on_example(state, [](const Made& made, const Font&, const std::vector<Sheet>&) {
    benchmark::DoNotOptimize(
        plan_stock(made.job, made.boards, made.padding, made.patterns, made.joins));
  });
}
BENCHMARK(BM_stock)->Unit(benchmark::kMicrosecond);

void BM_check(benchmark::State& state) {
  on_example(state, [](const Made& made, const Font&, const std::vector<Sheet>&) {
    benchmark::DoNotOptimize(
        check({made.job, made.season ? &*made.season : nullptr, made.frame, made.section,
               made.wraps, made.patterns, made.bare_gaps, made.covered_gaps, made.boards,
               made.padding, made.numerals ? &*made.numerals : nullptr, &made.stock,
               made.sight ? &*made.sight : nullptr}));
  });
}
BENCHMARK(BM_check)->Unit(benchmark::kMicrosecond);

void BM_build(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(made_example());
}
BENCHMARK(BM_build)->Unit(benchmark::kMicrosecond);

void BM_sheet(benchmark::State& state) {
  on_example(state, [](const Made& made, const Font& font, const std::vector<Sheet>&) {
    benchmark::DoNotOptimize(all_sheets(made, font));
  });
}
BENCHMARK(BM_sheet)->Unit(benchmark::kMicrosecond);

void BM_sheet_mesh(benchmark::State& state) {
  on_example(state, [](const Made& made, const Font&, const std::vector<Sheet>&) {
    for (const Wrap& wrap : made.wraps) benchmark::DoNotOptimize(make_mesh(wrap, made.job.cloth));
  });
}
BENCHMARK(BM_sheet_mesh)->Unit(benchmark::kMicrosecond);

void BM_write_pdf(benchmark::State& state) {
  on_example(state, [](const Made&, const Font& font, const std::vector<Sheet>& sheets) {
    for (const Sheet& sheet : sheets) benchmark::DoNotOptimize(to_pdf(sheet, font));
  });
}
BENCHMARK(BM_write_pdf)->Unit(benchmark::kMicrosecond);

/// Of every page, so that the two formats compare.
template <class Write>
void write_pages(benchmark::State& state, Write write) {
  on_example(state, [&](const Made&, const Font& font, const std::vector<Sheet>& sheets) {
    for (const Sheet& sheet : sheets)
      for (const Page& page : sheet.pages) benchmark::DoNotOptimize(write(page, sheet, font));
  });
}

void BM_write_svg(benchmark::State& state) {
  write_pages(state, [](const Page& page, const Sheet& sheet, const Font& font) {
    return to_svg(page, sheet.title, font);
  });
}
BENCHMARK(BM_write_svg)->Unit(benchmark::kMicrosecond);

void BM_write_dxf(benchmark::State& state) {
  write_pages(state,
              [](const Page& page, const Sheet&, const Font& font) { return to_dxf(page, font); });
}
BENCHMARK(BM_write_dxf)->Unit(benchmark::kMicrosecond);

void BM_write_report(benchmark::State& state) {
  on_example(state, [](const Made& made, const Font&, const std::vector<Sheet>& sheets) {
    benchmark::DoNotOptimize(report_json(made, told(sheets)));
  });
}
BENCHMARK(BM_write_report)->Unit(benchmark::kMicrosecond);

}  // namespace
