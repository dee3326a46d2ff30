#include <doctest/doctest.h>

#include <fstream>
#include <iterator>

#include "base/embedded.hpp"
#include "support/jobs.hpp"
#include "support/made.hpp"
#include "swathe/type.hpp"
#include "swathe/write.hpp"

// Fonts handed in again: not opened a second time, and nothing comes out otherwise.
namespace swathe {
namespace {

std::string report_of(const Job& job, OpenFonts* fonts, const NamedFiles& files = {}) {
  const auto made = make(job, files, {.fonts = fonts});
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  return report_json(*made, {});
}

Job numbered_job() {
  Job job = test::c_halves(28 * 25.4, 30 * 25.4);
  job.number = "20486";
  return job;
}

TEST_CASE("fonts are opened once for all jobs of one caller, with the same results") {
  OpenFonts fonts;
  Job job = numbered_job();
  for (const char* font : {"Anton", "Saira", "Anton", "Saira", "anton"}) {
    job.numerals.font = font;
    CHECK(report_of(job, &fonts) == report_of(job, nullptr));
  }
  CHECK(fonts.opened() == 2);
  job.numerals.font = "Saira";
  job.numerals.axes = {{"wght", 800}};
  CHECK(report_of(job, &fonts) == report_of(job, nullptr));
  CHECK(fonts.opened() == 3);
}

TEST_CASE("a font file is opened again only where its bytes are others") {
  OpenFonts fonts;
  Job job = numbered_job();
  job.numerals.font = "own.ttf";
  const auto bytes = [](const char* name) {
    return std::string(embedded(bundled_font(name)->file));
  };
  const std::string anton = report_of(job, &fonts, {{"own.ttf", bytes("Anton")}});
  CHECK(report_of(job, &fonts, {{"own.ttf", bytes("Anton")}}) == anton);
  CHECK(fonts.opened() == 1);
  const std::string saira = report_of(job, &fonts, {{"own.ttf", bytes("Saira")}});
  CHECK(saira != anton);
  CHECK(saira == report_of(job, nullptr, {{"own.ttf", bytes("Saira")}}));
  CHECK(fonts.opened() == 2);
}

TEST_CASE("the faces that advice tries are opened once") {
  OpenFonts fonts;
  Job job = numbered_job();
  job.numerals.height = mm(150);  // too wide for its sides: others are tried
  job.numerals.sides = std::vector<std::string>{"front", "back"};
  job.frame = test::rectangle_frame(420, 420);
  const auto faults_or_report = [&](OpenFonts* with) {
    const auto made = make(job, {}, {.fonts = with});
    return made ? report_json(*made, {}) : to_text(made.error().front());
  };
  const std::string first = faults_or_report(&fonts);
  const std::size_t opened = fonts.opened();
  CHECK(opened > 1);
  CHECK(faults_or_report(&fonts) == first);
  CHECK(faults_or_report(nullptr) == first);
  CHECK(fonts.opened() == opened);
}

}  // namespace
}  // namespace swathe
