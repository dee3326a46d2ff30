#include <doctest/doctest.h>

#include <cmath>

#include "support/drawn.hpp"
#include "swathe/pattern.hpp"

namespace swathe {
namespace {

ClothMap pulled(double along, double around) {
  ClothKeys cloth;
  cloth.stretch_along = along;
  cloth.stretch_around = around;
  return ClothMap(cloth);
}

TEST_CASE("cloth map (1): from the cover to its pattern and back is the same place") {
  test::for_drawn_cases("cloth-map", 1000, [](std::mt19937_64& rng) {
    const ClothMap map = pulled(test::drawn(rng, 0, 0.5), test::drawn(rng, 0, 0.5));
    const ClothPoint p{test::drawn(rng, -100, 3000), test::drawn(rng, -300, 300)};
    const ClothPoint back = map.to_cover(map.to_pattern(p));
    CHECK(std::abs(back.s - p.s) < 1e-9);
    CHECK(std::abs(back.u - p.u) < 1e-9);
  });
}

TEST_CASE("cloth map (2): cloth that is not pulled is its own pattern") {
  for (const ClothMap& map : {ClothMap(), ClothMap(ClothKeys())}) {
    CHECK_FALSE(map.pulls());
    CHECK(map.to_pattern({812.8, -61.7}) == FlatPoint{812.8, -61.7});
    CHECK(map.to_cover({812.8, -61.7}).s == 812.8);
  }
}

// By hand: of cloth that is pulled by 6 % on its way to 1,000 mm, 940 mm are cut.
TEST_CASE("cloth map: a share is taken out of the pattern, of each way its own") {
  const ClothMap map = pulled(0.06, 0.02);
  CHECK(map.to_pattern({1000, 100}).x == doctest::Approx(940));
  CHECK(map.to_pattern({1000, 100}).y == doctest::Approx(98));
}

TEST_CASE("cloth map: a cover that comes off has its own share round the bumper") {
  ClothKeys cloth;
  cloth.stretch_around = 0.2;
  cloth.hook_and_loop.stretch = 0.03;
  CHECK(ClothMap(cloth).to_pattern({0, 100}).y == doctest::Approx(80));
  cloth.fixing = Fixing::HookAndLoop;
  CHECK(ClothMap(cloth).to_pattern({0, 100}).y == doctest::Approx(97));
}

}  // namespace
}  // namespace swathe
