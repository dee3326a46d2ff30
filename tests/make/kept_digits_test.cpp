#include <doctest/doctest.h>

#include <algorithm>

#include "support/jobs.hpp"
#include "support/made.hpp"
#include "swathe/numeral.hpp"
#include "swathe/write.hpp"

// Digits handed in again: taken where they come to the same, and never where they do not.
namespace swathe {
namespace {

Job first_job() {
  Job job = test::c_halves(28 * 25.4, 30 * 25.4);
  job.number = "20486";
  return job;
}

Made made_with(const Job& job, const KeptDigits* kept) {
  auto made = make(job, {}, {.kept = kept});
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  return *std::move(made);
}

/// How many digits are taken from an earlier job's, which are marked by a number of islands that no
/// digit has.
long taken(const Job& before, const Job& job) {
  KeptDigits kept = kept_digits(made_with(before, nullptr));
  const Made again = made_with(job, &kept);
  CHECK(report_json(again, {}) == report_json(made_with(job, nullptr), {}));
  constexpr int kMark = 1000;
  for (Digit& digit : kept.digits) digit.counters = kMark;
  return std::ranges::count(made_with(job, &kept).numerals->digits, kMark, &Digit::counters);
}

TEST_CASE("digits are kept where the frame, the sight or the count of them changes") {
  const Job before = first_job();
  CHECK(taken(before, before) == 5);
  Job job = before;
  job.frame = test::rectangle_frame(27 * 25.4, 31 * 25.4);
  CHECK(taken(before, job) == 5);
  job.numerals.spares = 3;
  job.sight.eye_height = {mm(1500)};
  CHECK(taken(before, job) == 5);
  job.number = "2048";
  CHECK(taken(before, job) == 4);
}

TEST_CASE("digits are made anew where the font, their size or their making changes") {
  Job before = first_job();
  before.numerals.spacing.extra = mm(6);  // room for white outlines
  const std::vector<void (*)(NumeralKeys&)> changes = {
      [](NumeralKeys& keys) { keys.font = "Saira"; },
      [](NumeralKeys& keys) { keys.height = mm(120); },
      [](NumeralKeys& keys) { keys.bridge = mm(5); },
      [](NumeralKeys& keys) { keys.method = NumeralMethod::IronOn; },
      [](NumeralKeys& keys) { keys.outline = mm(2); },
  };
  for (std::size_t k = 0; k < changes.size(); ++k) {
    CAPTURE(k);
    Job job = before;
    changes[k](job.numerals);
    CHECK(taken(before, job) == 0);
    CHECK(taken(job, job) == 5);
  }
}

}  // namespace
}  // namespace swathe
