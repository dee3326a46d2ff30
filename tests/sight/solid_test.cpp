#include <doctest/doctest.h>

#include "sight/shadow.hpp"
#include "support/sight.hpp"
#include "swathe/sight.hpp"

namespace swathe {
namespace {

TEST_CASE("solid: a box has its own outline at every height") {
  const sight::Solid box = blind_solid(test::blind_box(10, 20, 30, 110, 70, 230), 1);
  CHECK(box.bottom() == 30);
  CHECK(box.top() == 230);
  for (const double z : {30.0, 100.0, 230.0}) {
    const plane::Polygon plan = box.plan_at(z);
    REQUIRE(plan.size() == 4);
    CHECK(area(plan) == doctest::Approx(100.0 * 50));  // (110 - 10) by (70 - 20), counter-clockwise
  }
}

TEST_CASE("solid: one that has no level may be asked, and hides nothing") {
  const sight::Solid none{};
  CHECK(none.bottom() == 0);
  CHECK(none.top() == 0);
  CHECK(none.plan_at(0).empty());
  const sight::Scene scene = test::worked_scene({"left"});
  REQUIRE(scene.numbers.size() == 1);
  for (const DigitInSpace& digit : scene.numbers[0].digits)
    CHECK(shadows_at(none, digit, 0).empty());
}

}  // namespace
}  // namespace swathe
