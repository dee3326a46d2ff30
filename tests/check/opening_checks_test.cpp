#include <doctest/doctest.h>

#include <algorithm>

#include "support/checked.hpp"
#include "support/jobs.hpp"

// What an opening leaves beside it. 2026 R401: one gap may be larger with 5 in of frame covered
// beside its corners; 2023 R401: 6 in each side of each corner. Worked by hand on a front of 28 in.
namespace swathe {
namespace {

Job with_opening(double width_in, const SidePlace& center = SideShare{0.5}) {
  Job job = test::c_halves(28 * 25.4, 30 * 25.4);
  job.cloth.thickness = mm(0);
  job.openings = {{"front", inches(width_in), center}};
  job.bumpers = {{"A", {"front", RunEnd::Opening{}}, {"front", RunEnd::Opening{}}}};
  return job;
}

Finding gap_of(const Job& job, const char* season) {
  return test::worst(test::made(job).by(season), "cover-gap");
}

TEST_CASE("opening: more than the least beside it passes, exactly the least warns") {
  CHECK(gap_of(with_opening(17), "2026").verdict == Verdict::Pass);  // 5 1/2 in are left
  const Finding least = gap_of(with_opening(18), "2026");            // 5 in
  CHECK(least.verdict == Verdict::Warn);
  CHECK(least.rule.empty());
  CHECK(least.measured == "5 in");
  CHECK(least.required == "more than 5 in of frame covered beside it");
  // 1/16 in more at both sides.
  REQUIRE(least.mend.size() == 1);
  CHECK(least.mend[0].key == "opening.1.width");
  CHECK(least.mend[0].value == "\"17 7/8 in\"");
}

TEST_CASE("opening: one too wide is told the widest that this side allows") {
  Job job = with_opening(20);
  const Finding wide = gap_of(job, "2026");
  CHECK(wide.verdict == Verdict::Fail);
  // 28 in less twice 5 in.
  REQUIRE(wide.mend.size() == 1);
  CHECK(wide.mend[0].key == "opening.1.width");
  CHECK(wide.mend[0].value == "\"18 in\"");
  CHECK(wide.advice == "set opening.1.width to \"18 in\": the widest that this side allows");

  // The cloth on both ends, three layers of it, is no board: 28 in - 10 in - 6 * 0.5 mm is
  // 17.88 in.
  job.cloth.thickness = mm(0.5);
  CHECK(gap_of(job, "2026").mend.at(0).value == "\"17 7/8 in\"");
}

TEST_CASE("opening: one off the middle keeps its center, or moves to the middle") {
  // 11 in from the corner with left: 6 in each side of it leave 5 in, 12 in of opening.
  const Finding wide = gap_of(with_opening(14, FromCorner{inches(11), "left"}), "2026");
  CHECK(wide.verdict == Verdict::Fail);
  REQUIRE(wide.mend.size() == 1);
  CHECK(wide.mend[0].value == "\"12 in\"");
  CHECK(wide.advice ==
        "set opening.1.width to \"12 in\", or to \"18 in\" with opening.1.center at \"50%\": the "
        "widest "
        "that this side allows");
}

TEST_CASE("opening: a season that asks for reach beside each corner says the same") {
  const Finding wide = test::worst(test::made(with_opening(18)).by("2023"), "corner-reach");
  CHECK(wide.verdict == Verdict::Fail);
  REQUIRE(wide.mend.size() == 1);
  CHECK(wide.mend[0].key == "opening.1.width");
  CHECK(wide.mend[0].value == "\"16 in\"");  // 28 in less twice 6 in
}

}  // namespace
}  // namespace swathe
