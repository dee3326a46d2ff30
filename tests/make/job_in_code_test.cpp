#include <doctest/doctest.h>

#include <limits>

#include "support/jobs.hpp"
#include "support/made.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"

// Jobs that a program builds, with no file: they are judged like those that were read.
namespace swathe {
namespace {

/// Two C-halves with a number, as a program might build them.
Job built() {
  Job job = test::c_halves(28 * 25.4, 30 * 25.4);
  job.title = "Tin Heron, \"built\"";
  job.number = "20486";
  return job;
}

TEST_CASE("a job built in code comes to the same as its text") {
  const Job job = built();
  CHECK(check_job(job).empty());
  const auto made = make(job);
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  CHECK(report_json(*made, {}) == report_json(test::made(job_text(job), "job"), {}));
  CHECK(made->job.title == job.title);
  CHECK(made->numerals.has_value());
}

/// The line of a job's text that a place is in.
std::string line_at(const std::string& text, const Place& place) {
  std::size_t from = 0;
  for (int line = 1; line < place.line; ++line) from = text.find('\n', from) + 1;
  return text.substr(from, text.find('\n', from) - from);
}

TEST_CASE("wrong values of a job built in code are told at their keys, all in one run") {
  constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
  constexpr double kEndless = std::numeric_limits<double>::infinity();
  struct Wrong {
    const char* key;
    void (*set)(Job&);
  };
  const std::vector<Wrong> wrongs = {
      {"title = ", [](Job& job) { job.title = "two\nlines"; }},
      {"number = ", [](Job& job) { job.number = "204861"; }},
      {"fit = ", [](Job& job) { job.frame.fit = mm(-1); }},
      {"thickness = ", [](Job& job) { job.boards.thickness = mm(kNone); }},
      {"stack = ", [](Job& job) { job.padding.stack = 9; }},
      {"density = ", [](Job& job) { job.cloth.density_kg_m2 = kEndless; }},
      {"bridge = ", [](Job& job) { job.numerals.bridge = mm(kEndless); }},
      {"step = ", [](Job& job) { job.sight.step = degrees(-1); }},
      {"sheet = ", [](Job& job) { job.paper.sheet = "napkin"; }},
  };
  Job all = built();
  for (const Wrong& wrong : wrongs) {
    CAPTURE(wrong.key);
    Job job = built();
    wrong.set(job);
    wrong.set(all);
    const Refusals faults = check_job(job);
    REQUIRE(faults.size() == 1);
    CHECK(line_at(job_text(job), faults.front().place).starts_with(wrong.key));
    CHECK(faults.front().place.file == "job");
    const auto made = make(job);
    REQUIRE_FALSE(made.has_value());
    CHECK(to_text(made.error().front()) == to_text(faults.front()));
  }
  CHECK(check_job(all).size() == wrongs.size());
}

TEST_CASE("parts of a job built in code that do not fit one another are told by make") {
  Job job = built();
  job.source = "heron.toml";
  job.bumpers[0].to = {"back", RunEnd::Share{0.75}};
  CHECK(check_job(job).empty());
  const auto made = make(job);
  REQUIRE_FALSE(made.has_value());
  CHECK(made.error().front().place.file == "heron.toml");
  const Place place = made.error().front().place;
  CHECK(line_at(job_text(job), place) ==
        "from = [\"back\", \"50%\"]");  // of the bumper that it lies over
}

}  // namespace
}  // namespace swathe
