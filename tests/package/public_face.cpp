// A program of somebody else's: it sees public headers alone, builds a job in code, and asks for
// all that the command makes of one.
#include <cstddef>
#include <cstdlib>
#include <iostream>
#include <string>
#include <string_view>
#include <utility>

#include "swathe/swathe.hpp"

namespace {

int failed = 0;

void check(std::string_view what, bool good) {
  std::cout << (good ? "ok - " : "not ok - ") << what << '\n';
  if (!good) ++failed;
}

/// A rectangle with a C-half to each side of it.
swathe::Job two_halves(double width, double depth) {
  swathe::Job job;
  job.title = "Tin Heron, built in code";
  job.number = "20486";
  job.frame.corners = {{width, depth}, {0, depth}, {0, 0}, {width, 0}};
  job.frame.sides = {"front", "left", "back", "right"};
  const swathe::RunEnd::Share middle{0.5};
  job.bumpers.resize(2);
  job.bumpers[0].name = "A";
  job.bumpers[0].from = {"front", middle};
  job.bumpers[0].to = {"back", middle};
  job.bumpers[1].name = "B";
  job.bumpers[1].from = {"back", middle};
  job.bumpers[1].to = {"front", middle};
  return job;
}

swathe::Font labels() {
  auto font = swathe::Font::open(swathe::label_font());
  if (!font) {
    std::cout << "not ok - the label font opens\n";
    std::exit(1);
  }
  return std::move(*font);
}

bool starts(const std::string& bytes, std::string_view with) { return bytes.starts_with(with); }

void check_files(const swathe::Made& made) {
  const swathe::Font font = labels();
  const auto listed = swathe::list_sheets(made, font);
  check("there are sheets", !listed.empty());
  std::size_t files = 0, covers = 0, pdfs = 0, reports = 0;
  swathe::JobFiles all(made, font);
  while (const auto file = all.next()) {
    ++files;
    if (starts(file->bytes, "%PDF-")) ++pdfs;
    if (file->name.ends_with(".obj")) ++covers;
    if (file->name.ends_with(".json") && starts(file->bytes, "{")) ++reports;
  }
  check("every sheet comes as a PDF", pdfs == listed.size());
  check("every cover comes as a mesh", covers == made.patterns.size());
  check("the report comes once", reports == 1);
  check("and drawings besides", files > pdfs + covers + reports);
}

}  // namespace

int main() {
  const swathe::Job job = two_halves(28 * 25.4, 30 * 25.4);
  check("a job built in code has no fault", swathe::check_job(job).empty());
  const auto made = swathe::make(job);
  check("it is made", made.has_value());
  if (!made) return 1;
  check("with a cover a bumper", made->patterns.size() == 2);
  check("with its number on it", made->numerals && !made->numerals->placed.empty());
  check("with findings", !made->findings.empty());
  check_files(*made);

  const auto text = swathe::set_value(swathe::job_text(job), "boards.height", "4 1/2 in");
  check("one value of its text is changed", text.has_value());
  const auto lower = text ? swathe::make(text->text, "job.toml") : made;
  check("which is made again", lower.has_value());
  check("into lower boards", lower && lower->job.boards.height == swathe::inches(4.5));

  swathe::Job wrong = job;
  wrong.boards.height = swathe::mm(-1);
  const auto faults = swathe::check_job(wrong);
  check("a wrong value is told at its key",
        faults.size() == 1 && faults.front().place.key == "boards.height");
  check("every check has its words", !swathe::check_words().empty());
  return failed == 0 ? 0 : 1;
}
