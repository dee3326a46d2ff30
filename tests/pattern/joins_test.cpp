#include "pattern/joins.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "plane/clip.hpp"
#include "support/drawn_jobs.hpp"
#include "support/jobs.hpp"
#include "support/patterns.hpp"

namespace swathe {
namespace {

using test::pattern_of;

TEST_CASE("cloth off the roll, or long enough, takes no seam") {
  Job job = test::worked_job();
  CHECK(lay_joins(pattern_of(job), job, {})->empty());
  job.cloth.longest_piece = mm(pattern_of(job).cloth_length + 1);
  CHECK(lay_joins(pattern_of(job), job, {})->empty());
}

TEST_CASE("a cover too long for the cloth is refused unless a seam is allowed") {
  Job job = test::worked_job();
  job.cloth.longest_piece = inches(60);
  job.places.set("cloth.longest_piece", {"job.toml", 31, 17});
  const auto refused = lay_joins(pattern_of(job), job, {});
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error()[0].why == Why::DoesNotFit);
  CHECK(refused.error()[0].place.line == 31);
  job.cloth.may_join = true;
  const auto joins = lay_joins(pattern_of(job), job, {});
  REQUIRE(joins.has_value());
  REQUIRE(joins->size() == 1);
  // Both corners lie within the first piece's reach: the further one's pleat hides the seam.
  CHECK((*joins)[0].under_pleat);
  CHECK((*joins)[0].s == doctest::Approx(pattern_of(job).corners[1].s));
}

TEST_CASE("joins (1) and (2): drawn jobs, drawn cloth, drawn numerals") {
  int seams = 0;
  test::for_drawn_cases("joins", 300, [&](std::mt19937_64& rng) {
    Job job = test::drawn_job(rng);
    const auto stood = test::stand(job);
    if (!stood) return;
    const Pattern& pattern = stood->patterns[0];
    job.cloth.may_join = true;
    job.cloth.longest_piece = mm(test::drawn(rng, 300, 1500));
    std::vector<Occupied> occupied;
    for (int k = 0; k < 3; ++k) {
      const double from = test::drawn(rng, 0, pattern.length);
      occupied.push_back({from, from + test::drawn(rng, 20, 200)});
    }
    const auto joins = lay_joins(pattern, job, occupied);
    if (!joins) return;
    const plane::Box box = bounds(pattern.outline);
    double start = box.lo.x, sewn = 0.0;
    for (const ClothJoin& join : *joins) {
      ++seams;
      CHECK(join.s - start + sewn + join.allowance <= job.cloth.longest_piece->mm() + 1e-9);
      start = join.s;
      sewn = join.allowance;
      if (join.under_pleat) continue;
      for (const Occupied& bar : occupied) CHECK((join.s <= bar.from || join.s >= bar.to));
      for (const PatternCorner& corner : pattern.corners)
        CHECK(std::abs(join.s - corner.s) > 0.5 * bounds(corner.notch_top).width());
    }
    CHECK(box.hi.x - start + sewn <= job.cloth.longest_piece->mm() + 1e-9);
  });
  CHECK(seams > 50);
}

TEST_CASE("the parts of a joined cover overlap by both allowances, and are named in order") {
  Job job = test::worked_job();
  job.cloth.longest_piece = inches(48);
  job.cloth.may_join = true;
  Pattern pattern = pattern_of(job);
  CHECK(cloth_parts(pattern, {}).size() == 1);
  CHECK(cloth_parts(pattern, {})[0].name == "A");
  const std::vector<ClothJoin> joins = *lay_joins(pattern, job, {});
  const auto parts = cloth_parts(pattern, joins);
  REQUIRE(parts.size() == joins.size() + 1);
  CHECK(parts[0].name == "A1");
  CHECK(parts[1].name == "A2");
  double along = 0.0;
  plane::Region cover;
  for (const ClothPart& part : parts) {
    along += part.box.width();
    const plane::Box outline = bounds(part.outline);
    CHECK(apart(outline.lo, part.box.lo) < 2 * plane::kClipGrid);
    CHECK(apart(outline.hi, part.box.hi) < 2 * plane::kClipGrid);
    cover = unite(cover, {part.outline});
    CHECK(part.box.width() <= job.cloth.longest_piece->mm() + 1e-9);
    CHECK(part.box.height() == doctest::Approx(pattern.cloth_width));
  }
  CHECK(area(subtract({pattern.outline}, cover)) < 1.0);  // together they are the cover
  CHECK(area(subtract(cover, {pattern.outline})) < 1.0);
  CHECK(along == doctest::Approx(pattern.cloth_length +
                                 2 * job.cloth.seam.mm() * static_cast<double>(parts.size() - 1)));
  pattern.bumper = "left 1";
  CHECK(cloth_parts(pattern, joins)[1].name == "left 1-2");
}

}  // namespace
}  // namespace swathe
