#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "plane/clip.hpp"
#include "support/drawn_number.hpp"
#include "support/made.hpp"
#include "swathe/job.hpp"
#include "swathe/type.hpp"

// Numerals of drawn jobs, from the job's text to where they lie on the pattern.
namespace swathe {
namespace {

#ifdef SWATHE_SANITIZED
constexpr int kJobs = 25;
#else
constexpr int kJobs = 500;
#endif

Outcome<Made> made_of(const Job& job) { return test::make_text(job_text(job)); }

/// All that shows of a number at its place: its digits, or the white round them.
plane::Region shown(const Made& made, const PlacedNumeral& placed) {
  plane::Region region;
  for (const PlacedDigit& at : placed.digits) {
    const auto digit = std::ranges::find(made.numerals->digits, at.digit, &Digit::digit);
    REQUIRE(digit != made.numerals->digits.end());
    for (plane::Polygon contour : digit->white ? digit->white->outline : digit->outline) {
      for (FlatPoint& p : contour) p = p + at.origin;
      region.push_back(contour);
    }
  }
  return region;
}

/// Half the width that a corner's pleat or seam takes out of the front at this level.
double dart_at(const PatternCorner& corner, double u) {
  const auto& dart = corner.dart;
  if (dart.empty() || u <= dart.front().u) return dart.empty() ? 0 : dart.front().half_width;
  for (std::size_t k = 1; k < dart.size(); ++k) {
    if (u > dart[k].u) continue;
    const double share = (u - dart[k - 1].u) / std::max(1e-12, dart[k].u - dart[k - 1].u);
    return dart[k - 1].half_width + share * (dart[k].half_width - dart[k - 1].half_width);
  }
  return dart.back().half_width;
}

void check_clear(const Made& made, const PlacedNumeral& placed) {
  CAPTURE(placed.side);
  CAPTURE(placed.text);
  const Pattern& pattern = made.patterns[static_cast<std::size_t>(placed.bumper)];
  const plane::Region ink = shown(made, placed);
  CHECK(area(subtract(ink, {pattern.outline})) < 1e-3);  // on the cloth
  for (const plane::Polygon& window : pattern.holes) CHECK(intersect(ink, {window}).empty());
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const plane::Path& window : bracket.windows)
      CHECK(intersect(ink, {flatten(window, 0.01)}).empty());
  for (const PatternCorner& corner : pattern.corners) {
    for (const plane::Polygon* notch : {&corner.notch_top, &corner.notch_bottom})
      if (!notch->empty()) CHECK(intersect(ink, {*notch}).empty());
    bool clear = true;
    const bool left_of_it = placed.center_s < corner.s;
    for (const plane::Polygon& contour : ink)
      for (const FlatPoint p : contour) {
        const double off = left_of_it ? corner.s - p.x : p.x - corner.s;
        clear = clear && off >= dart_at(corner, p.y) - 0.01;
      }
    CHECK(clear);  // off the corner's line and its pleat or seam
  }
  for (const plane::Polygon& contour : ink)
    for (const FlatPoint p : contour) {
      CHECK(p.x > 0);
      CHECK(p.x < pattern.length);
    }
}

/// Each change that an advice names, made in a job of its own; nothing where it names no height or
/// font.
std::vector<Job> as_advised(const Job& job, const NumeralMisfit& misfit) {
  std::vector<Job> advised;
  Job next = job;
  next.numerals.sides = {{misfit.side}};
  const std::string& advice = misfit.advice;
  const std::string before = "set numerals.height to ";
  if (advice.starts_with(before)) {
    const auto height =
        parse_length(advice.substr(before.size(), advice.find(';') - before.size()), job.units);
    REQUIRE_MESSAGE(height.has_value(), advice);
    advised.push_back(next);
    advised.back().numerals.height = *height;
  }
  for (const BundledFont& font : bundled_fonts())
    if (advice.find(font.name + " (") != std::string::npos) {
      advised.push_back(next);
      advised.back().numerals.font = font.name;
    }
  return advised;
}

}  // namespace

TEST_CASE("drawn numerals: off every corner, fold, end and window; advice that is taken mends") {
  int tried = 0, placed = 0, mended = 0;
  test::for_drawn_cases("drawn-numerals", kJobs, [&](std::mt19937_64& rng) {
    const Job job = test::drawn_number(rng);
    ++tried;
    const Outcome<Made> made = made_of(job);
    if (!made) return;
    CAPTURE(job_text(job));
    for (const PlacedNumeral& numeral : made->numerals_on_patterns()) {
      check_clear(*made, numeral);
      ++placed;
    }
    if (made->numerals->misfits.empty()) return;
    const NumeralMisfit& misfit = made->numerals->misfits.front();
    CAPTURE(misfit.advice);
    for (const Job& next : as_advised(job, misfit)) {
      const Outcome<Made> again = made_of(next);
      REQUIRE_MESSAGE(again.has_value(), to_text(again.error().front()));
      CHECK(again->numerals->misfits.empty());
      CHECK_FALSE(again->numerals->placed.empty());
      ++mended;
    }
  });
  CHECK(placed > 0);
  // Split numbers are too rare among these to count on: tests/numeral/split_test.cpp draws them.
  if (tried >= 500) CHECK(mended > 0);
}

}  // namespace swathe
