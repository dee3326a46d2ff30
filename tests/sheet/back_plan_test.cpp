#include "sheet/back_plan.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"

namespace swathe {
namespace {

TEST_CASE("backs (1): every staple is where Wrap puts it, once") {
  // Wrap leads from the cloth to a place in space by another way: through the section and the
  // frame's plan.
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    for (std::size_t b = 0; b < made.patterns.size(); ++b) {
      std::vector<int> orders;
      const auto backs = backs_of(made, b);
      for (std::size_t leg = 0; leg < backs.size(); ++leg) {
        const RunSide& run = made.wraps[b].run().sides[leg];
        const FrameSide& side = made.frame.sides()[static_cast<std::size_t>(run.side)];
        for (const StapleOnBoard& on : backs[leg].staples) {
          orders.push_back(on.order);
          const auto staple = std::ranges::find(made.patterns[b].staples, on.order, &Staple::order);
          REQUIRE(staple != made.patterns[b].staples.end());
          CHECK(on.x > run.from_x);
          CHECK(on.x < run.to_x);
          CHECK(on.z > 0);
          CHECK(on.z < made.section.height_mm());
          if (staple->upright) continue;  // past the end face Wrap has no cloth
          const double squeeze = 1.0 - (made.job.cloth.fixing == Fixing::Staples
                                            ? made.job.cloth.stretch_around
                                            : made.job.cloth.hook_and_loop.stretch);
          const double along = 1.0 - made.job.cloth.stretch_along;
          // At a filled corner the cloth lies further up, and the staple on its line all the same.
          const double s = staple->at.x / along, u = staple->at.y / squeeze;
          const double taken = taken_at_corners(made.wraps[b], made.job.cloth, s);
          const auto at = made.wraps[b].at({s, u > 0 ? u - taken : u + taken});
          const double line = made.job.cloth.staple_line.mm();
          CHECK(std::min(on.z, made.section.height_mm() - on.z) ==
                doctest::Approx(line).epsilon(1e-9));
          REQUIRE(at);
          const FlatPoint from_corner = FlatPoint{at->x, at->y} - side.from;
          CHECK(on.x == doctest::Approx(dot(from_corner, side.along)).epsilon(1e-9));
          CHECK(on.z + made.frame.floor_gap().mm() == doctest::Approx(at->z).epsilon(1e-9));
          CHECK(std::abs(dot(from_corner, side.outward)) < 1.0);  // on the board's back
        }
      }
      std::ranges::sort(orders);
      const auto in_ends =
          std::ranges::count(made.patterns[b].staples, Staple::On::Ear, &Staple::on);
      CHECK(orders.size() + static_cast<std::size_t>(in_ends) == made.patterns[b].staples.size());
      CHECK(std::ranges::adjacent_find(orders) == orders.end());
    }
  }
}

TEST_CASE("backs: every crown lies on its board, also where padding and tongue are higher") {
  const Made made =
      test::made_example(SWATHE_TEST_DATA "/write/jobs/drawn-tongue-higher-than-board.toml");
  std::size_t upright = 0;
  for (std::size_t b = 0; b < made.patterns.size(); ++b)
    for (const BoardBack& back : backs_of(made, b))
      for (const StapleOnBoard& staple : back.staples) {
        upright += staple.upright;
        const double half = staple.upright ? 5.0 : 0.0;  // of a crown of 10 mm
        CHECK(staple.z - half > 0);
        CHECK(staple.z + half < made.section.height_mm());
      }
  CHECK(upright >= 6);
}

TEST_CASE("backs (2): no staple and no strip lies on a bracket") {
  int brackets = 0;
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    for (std::size_t b = 0; b < made.patterns.size(); ++b)
      for (const BoardBack& back : backs_of(made, b))
        for (const BracketOnBoard& bracket : back.brackets) {
          ++brackets;
          for (const StapleOnBoard& staple : back.staples)
            CHECK_FALSE(bracket.box.holds(FlatPoint{staple.x, staple.z}));
          for (const plane::Box& strip : back.strips) CHECK_FALSE(bracket.box.meets(strip));
        }
  }
  CHECK(brackets >= 4);
}

TEST_CASE("backs' picture: as seen from inside the machine") {
  // Mid of the left side's row: its left end as seen from outside is on the right.
  const Made made = test::made_example(test::example("tin-heron"));
  const Picture picture = draw_backs(made, 0, test::label_font(), 190);
  double first = -1, third = -1;
  for (const TextMark& text : test::texts_of(picture.drawing)) {
    // Bracket 1 is 9 in from the left, bracket 3 is 5 in from the right.
    if (text.text == "1" && text.height_mm == 2.5) first = std::max(first, text.at.x);
    if (text.text == "3" && text.height_mm == 2.5)
      third = third < 0 ? text.at.x : std::min(third, text.at.x);
  }
  REQUIRE(first > 0);
  REQUIRE(third > 0);
  CHECK(first > third);
  // Every fifth staple at least bears its number.
  for (std::size_t order = 5; order <= made.patterns[0].staples.size(); order += 5) {
    if (made.patterns[0].staples[order - 1].on == Staple::On::Ear) continue;  // not on a back
    CHECK_MESSAGE(std::ranges::any_of(
                      test::texts_of(picture.drawing),
                      [&](const TextMark& text) { return text.text == std::to_string(order); }),
                  order);
  }
}

}  // namespace
}  // namespace swathe
