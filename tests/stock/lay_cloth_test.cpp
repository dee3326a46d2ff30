#include <doctest/doctest.h>

#include <algorithm>

#include "stock/strip.hpp"
#include "swathe/stock/stock.hpp"

namespace swathe {
namespace {

Pattern cover(const char* name, double along, double across) {
  Pattern pattern;
  pattern.bumper = name;  // off the origin, as patterns are
  pattern.outline = {
      {-50, -across / 2}, {along - 50, -across / 2}, {along - 50, across / 2}, {-50, across / 2}};
  pattern.cloth_area = along * across;
  return pattern;
}

ClothKeys roll(double width, double step) {
  ClothKeys cloth;
  cloth.roll_width = mm(width);
  cloth.buy_step = mm(step);
  return cloth;
}

bool apart_and_inside(const StripLay& lay, const std::vector<StripBox>& boxes, double width) {
  constexpr double kTouch = 1e-6;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const FlatPoint a = lay.at[i];
    if (a.x < 0 || a.y < 0 || a.y + boxes[i].across > width + kTouch ||
        a.x + boxes[i].along > lay.length + kTouch) {
      return false;
    }
    for (std::size_t j = 0; j < i; ++j) {
      const FlatPoint b = lay.at[j];
      if (a.x + boxes[i].along > b.x + kTouch && b.x + boxes[j].along > a.x + kTouch &&
          a.y + boxes[i].across > b.y + kTouch && b.y + boxes[j].across > a.y + kTouch) {
        return false;
      }
    }
  }
  return true;
}

}  // namespace

TEST_CASE("covers lie side by side across the roll while they fit") {
  const std::vector<Pattern> two = {cover("A", 2000, 480), cover("B", 1900, 480)};
  const ClothLay beside = lay_cloth(two, roll(1000, 250), "red");
  CHECK(beside.length == doctest::Approx(2000));
  CHECK(beside.length_to_buy == doctest::Approx(2000));
  CHECK(beside.used_fraction == doctest::Approx(3900.0 * 480 / (2000.0 * 1000)));
  const ClothLay behind = lay_cloth(two, roll(900, 250), "red");
  CHECK(behind.length == doctest::Approx(3900));
  CHECK(behind.length_to_buy == doctest::Approx(4000));
}

TEST_CASE("short covers share the place beside a long one") {
  const ClothLay lay = lay_cloth(
      {cover("A", 1000, 480), cover("B", 500, 480), cover("C", 500, 480)}, roll(960, 0), "blue");
  CHECK(lay.length == doctest::Approx(1000));
  CHECK(lay.used_fraction == doctest::Approx(1.0));
}

TEST_CASE("a cover wider than the roll is named, the rest is laid") {
  const ClothLay lay =
      lay_cloth({cover("A", 900, 500), cover("B", 900, 400)}, roll(450, 100), "red");
  REQUIRE(lay.does_not_fit.size() == 1);
  CHECK(lay.does_not_fit[0] == "A");
  REQUIRE(lay.placements.size() == 1);
  CHECK(lay.placements[0].bumper == "B");
  CHECK_FALSE(lay.placements[0].turned);
  CHECK(lay.length_to_buy == doctest::Approx(900));
}

TEST_CASE("a joined cover is laid part by part, each no longer than a length of cloth") {
  Pattern a = cover("A", 2000, 480);  // from -50 to 1950
  ClothJoin join;
  join.s = 1150;
  join.allowance = 10;
  join.from = {1150, -240};
  join.to = {1150, 240};
  a.joins = {join};
  ClothKeys cloth = roll(1000, 0);
  cloth.longest_piece = mm(1250);
  const ClothLay lay = lay_cloth({a, cover("B", 700, 480)}, cloth, "red");
  REQUIRE(lay.placements.size() == 3);
  CHECK(lay.placements[0].bumper == "A");
  CHECK(lay.placements[0].piece == "A1");  // 1210 with its allowance
  CHECK(lay.placements[1].piece == "A2");  // 810
  CHECK(lay.placements[2].piece == "B");
  // 1210 and 810 side by side on one length of cloth; 700 fits after neither: on the next length.
  CHECK(lay.length == doctest::Approx(1250 + 700));
  // Uncut cloth takes them in 810 + 700, beside 1210.
  cloth.longest_piece.reset();
  const ClothLay uncut = lay_cloth({a, cover("B", 700, 480)}, cloth, "red");
  CHECK(uncut.length == doctest::Approx(810 + 700));
  CHECK(uncut.used_fraction ==
        doctest::Approx((2020.0 * 480 + 700.0 * 480) / (1510.0 * 1000)));  // allowances in
}

// E. Hopper and B. C. H. Turton, European Journal of Operational Research 128 (2001) 34-57, class
// C1: strip 20 wide, 16 or 17 boxes that fill a length of exactly 20. A simple placement is known
// to come within a fifth or so of it; that it never beats 20 shows that nothing overlaps.
TEST_CASE("boxes cut from a full strip are laid near the least length") {
  const std::vector<std::vector<StripBox>> cases = {
      {{12, 2},
       {12, 7},
       {6, 8},
       {6, 3},
       {5, 3},
       {5, 5},
       {12, 3},
       {7, 3},
       {7, 5},
       {6, 2},
       {2, 3},
       {2, 4},
       {4, 3},
       {4, 4},
       {2, 9},
       {2, 11}},
      {{1, 4},
       {1, 4},
       {5, 4},
       {4, 9},
       {5, 3},
       {9, 3},
       {4, 1},
       {3, 5},
       {5, 5},
       {2, 7},
       {2, 7},
       {3, 9},
       {13, 3},
       {8, 2},
       {4, 15},
       {4, 5},
       {6, 10}},
      {{14, 4},
       {2, 5},
       {2, 2},
       {7, 9},
       {5, 5},
       {5, 2},
       {7, 7},
       {5, 3},
       {5, 6},
       {2, 3},
       {2, 6},
       {6, 4},
       {3, 6},
       {3, 6},
       {3, 10},
       {3, 10}},
  };
  for (const auto& boxes : cases) {
    double area = 0;
    for (const StripBox& box : boxes) area += box.along * box.across;
    CHECK(area == doctest::Approx(400));  // the figures were copied right
    const StripLay lay = lay_on_strip(boxes, 20);
    CHECK(apart_and_inside(lay, boxes, 20));
    CHECK(lay.length >= 20 - 1e-9);
    CHECK(lay.length <= 24);
  }
}

}  // namespace swathe
