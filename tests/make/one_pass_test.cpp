#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "pattern/joins.hpp"
#include "support/jobs.hpp"
#include "support/made.hpp"

// What a stage gave stays as it was: seams and shared names stand beside the patterns.
namespace swathe {
namespace {

bool same_points(const plane::Polygon& a, const plane::Polygon& b) {
  return std::ranges::equal(a, b,
                            [](FlatPoint p, FlatPoint q) { return p.x == q.x && p.y == q.y; });
}

Job pieced_job() {
  Job job = test::worked_job();
  job.number = "20486";
  job.cloth.may_join = true;
  job.cloth.longest_piece = inches(48);
  return job;
}

TEST_CASE("one pass: patterns are those that make_pattern gave") {
  const auto made = make(pieced_job());
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  REQUIRE(made->patterns.size() == 2);
  for (std::size_t b = 0; b < made->patterns.size(); ++b) {
    const auto alone = make_pattern(made->wraps[b], made->job);
    REQUIRE(alone.has_value());
    CHECK(same_points(made->patterns[b].outline, alone->outline));
    CHECK(std::ranges::equal(made->patterns[b].marks, alone->marks, {}, &MatchMark::name,
                             &MatchMark::name));
  }
}

TEST_CASE("one pass: seams of each cover stand beside it, clear of its numerals") {
  const auto made = make(pieced_job());
  REQUIRE(made.has_value());
  REQUIRE(made->joins.size() == made->patterns.size());
  for (std::size_t b = 0; b < made->joins.size(); ++b) {
    CHECK_FALSE(made->joins[b].empty());
    for (const ClothPart& part : cloth_parts(made->patterns[b], made->joins[b]))
      CHECK(part.box.width() <= inches(48).mm() + 1e-9);
    for (const ClothJoin& join : made->joins[b])
      for (const PlacedNumeral& numeral : made->numerals_on_patterns())
        if (numeral.bumper == static_cast<int>(b))
          CHECK(std::abs(join.s - numeral.center_s) > 0.5 * numeral.width);
  }
  Job whole = pieced_job();
  whole.cloth.longest_piece.reset();
  const auto in_one = make(whole);
  REQUIRE(in_one.has_value());
  REQUIRE(in_one->joins.size() == 2);
  for (const auto& joins : in_one->joins) CHECK(joins.empty());
}

TEST_CASE("one pass: names of marks are the print's where a cover is cut from it") {
  Job job = test::worked_job();
  const auto made = make(job);
  REQUIRE(made.has_value());
  REQUIRE(made->mark_names.size() == 2);
  REQUIRE(made->same[1].has_value());
  REQUIRE(made->same[1]->how == Sameness::How::Same);
  CHECK(made->mark_names[1] == made->mark_names[0]);
  for (std::size_t b = 0; b < 2; ++b) {
    REQUIRE(made->mark_names[b].size() == made->patterns[b].marks.size());
    CHECK(made->patterns[b].marks.front().name == "M1");
  }
  // Flipped, B's first mark is A's last; the pattern itself still counts from its own left.
  job.brackets.resize(2);
  for (const bool first : {true, false}) {
    BracketKeys& keys = job.brackets[first ? 0 : 1];
    keys.side = first ? "left" : "right";
    keys.at = FromCorner{inches(5), "front"};
    keys.width = inches(2);
    keys.height = inches(1.5);
    keys.cloth = BracketCloth::Window;
  }
  const auto flipped = make(job);
  REQUIRE_MESSAGE(flipped.has_value(), to_text(flipped.error().front()));
  REQUIRE(flipped->same[1].has_value());
  REQUIRE(flipped->same[1]->how == Sameness::How::Mirrored);
  CHECK(flipped->mark_names[1].front() == flipped->mark_names[0].back());
  CHECK(flipped->patterns[1].marks.front().name == "M1");
}

}  // namespace
}  // namespace swathe
