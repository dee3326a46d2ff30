#include "pattern/half_pattern.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "support/jobs.hpp"
#include "support/patterns.hpp"

// Half of a cover, put beside its mirror image: together they are the whole, part by part.
namespace swathe {
namespace {

/// A cover whose halves are alike: no bracket, two corners on either side of the fold.
Pattern whole_of(bool hook_and_loop) {
  Job job = test::c_halves(28 * 25.4, 30 * 25.4);
  job.brackets.clear();
  if (hook_and_loop) job.cloth.fixing = Fixing::HookAndLoop;
  return test::pattern_of(job);
}

std::vector<std::string> own_names(const Pattern& pattern) {
  std::vector<std::string> names;
  for (const MatchMark& mark : pattern.marks) names.push_back(mark.name);
  return names;
}

double length_of(const std::vector<plane::Path>& paths) {
  double sum = 0;
  for (const plane::Path& path : paths) sum += length(path);
  return sum;
}

double length_of(const std::vector<HemFold>& hems) {
  double sum = 0;
  for (const HemFold& hem : hems) sum += length(hem.path());
  return sum;
}

double length_of(const std::vector<PleatLine>& pleats) {
  double sum = 0;
  for (const PleatLine& pleat : pleats) sum += length(pleat.path);
  return sum;
}

TEST_CASE("half a pattern: twice each kind of line is the whole's") {
  for (const bool hook_and_loop : {false, true}) {
    CAPTURE(hook_and_loop);
    const Pattern whole = whole_of(hook_and_loop);
    const HalfPattern half = first_half(whole, own_names(whole));
    const double cuts = length(closed_path(whole.outline)) + length_of(whole.snips);
    CHECK(2 * length_of(half.cuts) == doctest::Approx(cuts).epsilon(1e-6));
    CHECK(2 * length_of(half.pleats) == doctest::Approx(length_of(whole.pleats)).epsilon(1e-6));
    CHECK(2 * length_of(half.hems) == doctest::Approx(length_of(whole.hems)).epsilon(1e-6));
    CHECK(2 * length_of(half.strips) == doctest::Approx(length_of(whole.strips)).epsilon(1e-3));
    CHECK(length_of(whole.pleats) > 0);
    CHECK((length_of(whole.hems) > 0) == hook_and_loop);
    CHECK(half.fold == doctest::Approx(0.5 * whole.length));
    CHECK(half.box.width() == doctest::Approx(0.5 * whole.cloth_length));
    REQUIRE(half.ends.size() == 1);
    CHECK(half.ends[0].start);
    CHECK(2 * half.corners.size() == whole.corners.size());
  }
}

TEST_CASE("half a pattern: nothing lies past the fold") {
  const Pattern whole = whole_of(true);
  const HalfPattern half = first_half(whole, own_names(whole));
  const auto before = [&](FlatPoint p) { return p.x < half.fold + 1e-6; };
  for (const auto* paths : {&half.cuts, &half.stitches, &half.seam_marks, &half.strips})
    for (const plane::Path& path : *paths)
      for (const plane::Vertex& vertex : path.vertices) CHECK(before(vertex.at));
  for (const HemFold& hem : half.hems) CHECK((before(hem.from) && before(hem.to)));
  for (const NamedLine& line : half.lines) CHECK((before(line.from) && before(line.to)));
  for (const MatchMark& mark : half.marks) CHECK(before(mark.at));
}

TEST_CASE("half a pattern: each mark bears its own name as printed, and its mirror image's") {
  const Pattern whole = whole_of(false);
  std::vector<std::string> names;  // as those of another's print
  for (std::size_t k = 0; k < whole.marks.size(); ++k)
    names.push_back("N" + std::to_string(k / 2 + 1));
  const HalfPattern half = first_half(whole, names);
  REQUIRE(half.mark_names.size() == half.marks.size());
  std::size_t on_fold = 0;
  for (std::size_t k = 0; k < half.marks.size(); ++k) {
    if (std::abs(half.marks[k].at.x - half.fold) < 0.1) {
      ++on_fold;
      CHECK(half.mark_names[k].find(',') == std::string::npos);
      continue;
    }
    // From the left the k-th mark's image is the k-th from the right, on the same edge.
    const std::string expected = names[k] + ", " + names[whole.marks.size() - 1 - (k ^ 1)];
    CHECK(half.mark_names[k] == expected);
  }
  CHECK(half.marks.size() - on_fold == (whole.marks.size() - on_fold) / 2);
}

}  // namespace
}  // namespace swathe
