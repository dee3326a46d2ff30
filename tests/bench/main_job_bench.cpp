// The main job on the example, from the job's text to the bytes of every PDF and the report, and
// beside it a floor: plain Cairo drawing as many pages, strokes, areas and straight pieces, with
// nothing worked out. What stands between the two is ours.
#include <benchmark/benchmark.h>
#include <cairo-pdf.h>

#include <chrono>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include "swathe/build/make.hpp"
#include "swathe/sheet/sheets.hpp"
#include "swathe/type/faces.hpp"
#include "swathe/write/pdf.hpp"
#include "swathe/write/report.hpp"

namespace {

using namespace swathe;

std::string example() {
  std::ostringstream text;
  text << std::ifstream(SWATHE_SOURCE "/examples/tin-heron.toml").rdbuf();
  return text.str();
}

std::vector<Sheet> sheets_of_example(const Face& labels, std::string* report = nullptr) {
  static const std::string job = example();
  const auto no_files = [](const std::string& name) { return refuse(Why::Missing, name); };
  const auto made = make(job, "tin-heron.toml", no_files);
  if (!made) std::abort();
  std::vector<Sheet> sheets = all_sheets(*made, labels);
  if (report != nullptr) *report = report_json(*made, sheets);
  return sheets;
}

Face labels() {
  auto face = Face::open(label_face());
  if (!face) std::abort();
  return *face;
}

std::size_t main_job() {
  const Face face = labels();
  std::string report;
  std::size_t bytes = 0;
  for (const Sheet& sheet : sheets_of_example(face, &report)) bytes += to_pdf(sheet, face).size();
  return bytes + report.size();
}

/// What a page has to draw: straight pieces in each stroke and each area. A letter counts as the
/// pieces of its outline.
struct PageLoad {
  double width_mm = 0, height_mm = 0;
  std::vector<std::size_t> strokes, areas;
};

std::vector<std::vector<PageLoad>> loads_of_example() {
  const Face face = labels();
  std::vector<std::vector<PageLoad>> files;
  for (const Sheet& sheet : sheets_of_example(face)) {
    auto& file = files.emplace_back();
    for (const Page& page : sheet.pages) {
      PageLoad& load = file.emplace_back(PageLoad{page.width_mm, page.height_mm, {}, {}});
      for (const Mark& mark : page.drawing.marks()) {
        if (const auto* line = std::get_if<LineMark>(&mark))
          load.strokes.push_back(line->path.vertices.size());
        if (const auto* fill = std::get_if<FillMark>(&mark))
          for (const Path& path : fill->outlines) load.areas.push_back(path.vertices.size());
        if (const auto* text = std::get_if<TextMark>(&mark))
          for (const ShapedGlyph& glyph : face.shape(text->text))
            load.areas.push_back(face.outline(glyph.glyph).size());
      }
    }
  }
  return files;
}

cairo_status_t append(void* bytes, const unsigned char* data, unsigned size) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), size);
  return CAIRO_STATUS_SUCCESS;
}

/// As many straight pieces, somewhere on the page.
void lines(cairo_t* context, std::size_t pieces, const PageLoad& page) {
  cairo_move_to(context, 10, 10);
  for (std::size_t k = 1; k <= pieces; ++k) {
    const double along = static_cast<double>(k * 7919 % 1000) / 1000.0;
    cairo_line_to(context, along * page.width_mm, std::fmod(along * 37.0, 1.0) * page.height_mm);
  }
}

std::size_t floor_job(const std::vector<std::vector<PageLoad>>& files) {
  std::size_t total = 0;
  for (const auto& file : files) {
    std::string bytes;
    cairo_surface_t* surface = cairo_pdf_surface_create_for_stream(append, &bytes, 1, 1);
    for (const PageLoad& page : file) {
      cairo_pdf_surface_set_size(surface, page.width_mm * 72 / 25.4, page.height_mm * 72 / 25.4);
      cairo_t* context = cairo_create(surface);
      cairo_scale(context, 72 / 25.4, 72 / 25.4);
      for (const std::size_t pieces : page.areas) {
        lines(context, pieces, page);
        cairo_fill(context);
      }
      for (const std::size_t pieces : page.strokes) {
        lines(context, pieces, page);
        cairo_stroke(context);
      }
      cairo_show_page(context);
      cairo_destroy(context);
    }
    cairo_surface_finish(surface);
    cairo_surface_destroy(surface);
    total += bytes.size();
  }
  return total;
}

void BM_MainJob(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(main_job());
}
BENCHMARK(BM_MainJob)->Unit(benchmark::kMillisecond);

void BM_CairoFloor(benchmark::State& state) {
  const auto files = loads_of_example();
  for (auto _ : state) benchmark::DoNotOptimize(floor_job(files));
}
BENCHMARK(BM_CairoFloor)->Unit(benchmark::kMillisecond);

/// The least of ten runs: what else the machine does can only add.
template <class Work>
double least_seconds(Work work) {
  double least = std::numeric_limits<double>::infinity();
  for (int k = 0; k < 10; ++k) {
    const auto begin = std::chrono::steady_clock::now();
    benchmark::DoNotOptimize(work());
    least = std::min(
        least, std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count());
  }
  return least;
}

}  // namespace

int main(int count, char** words) {
  benchmark::Initialize(&count, words);
  benchmark::RunSpecifiedBenchmarks();
  const auto files = loads_of_example();
  std::printf("main job / Cairo floor: %.2f\n",
              least_seconds(main_job) / least_seconds([&] { return floor_job(files); }));
}
