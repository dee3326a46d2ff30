#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "pattern/joins.hpp"
#include "plane/clip.hpp"
#include "support/drawn_jobs.hpp"
#include "swathe/stock.hpp"

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
  cloth.shop_cut = mm(0);
  return cloth;
}

/// A cover with a tongue at each end, half as wide as the cover, as far up as asked.
Pattern tongued(const char* name, double along, double across, double tongue, double up) {
  Pattern pattern = cover(name, along, across);
  const double half = across / 2, low = up - across / 4, high = up + across / 4;
  pattern.outline = {{0, -half},
                     {along, -half},
                     {along, low},
                     {along + tongue, low},
                     {along + tongue, high},
                     {along, high},
                     {along, half},
                     {0, half},
                     {0, high},
                     {-tongue, high},
                     {-tongue, low},
                     {0, low}};
  pattern.cloth_area = area(pattern.outline);
  return pattern;
}

/// No two pieces share more than their edges, and none leaves the roll.
void check_apart_and_inside(const ClothLay& lay) {
  constexpr double kEdge = 0.01;  // mm: places are whole microns
  for (std::size_t b = 0; b < lay.placements.size(); ++b) {
    const ClothPlacement& one = lay.placements[b];
    const plane::Box box = bounds(one.outline);
    CHECK(box.lo.x == doctest::Approx(one.x));
    CHECK(box.lo.y == doctest::Approx(one.y));
    CHECK(box.lo.x > -kEdge);
    CHECK(box.lo.y > -kEdge);
    CHECK(box.hi.x < lay.length + kEdge);
    CHECK(box.hi.y < lay.roll_width + kEdge);
    for (std::size_t a = 0; a < b; ++a) {
      const plane::Region both = plane::intersect({lay.placements[a].outline}, {one.outline});
      CHECK(area(both) < kEdge * (box.width() + box.height()));
    }
  }
}

}  // namespace

TEST_CASE("covers lie side by side across the roll while they fit") {
  const std::vector<Pattern> two = {cover("A", 2000, 480), cover("B", 1900, 480)};
  const ClothLay beside = lay_cloth(two, {}, roll(1000, 250), "red");
  CHECK(beside.length == doctest::Approx(2000));
  CHECK(beside.length_to_buy == doctest::Approx(2000));
  CHECK(beside.used_fraction == doctest::Approx(3900.0 * 480 / (2000.0 * 1000)));
  const ClothLay behind = lay_cloth(two, {}, roll(900, 250), "red");
  CHECK(behind.length == doctest::Approx(3900));
  CHECK(behind.length_to_buy == doctest::Approx(4000));
}

// By hand: 2000 and 60 for a crooked cut are 2060, in steps of 250 that is 2250; without it 2000.
TEST_CASE("what a crooked cut takes is bought besides, before the shop's step") {
  const std::vector<Pattern> one = {cover("A", 2000, 480)};
  ClothKeys cloth = roll(1000, 250);
  cloth.shop_cut = mm(60);
  const ClothLay lay = lay_cloth(one, {}, cloth, "red");
  CHECK(lay.length == doctest::Approx(2000));
  CHECK(lay.shop_cut == doctest::Approx(60));
  CHECK(lay.length_to_buy == doctest::Approx(2250));
  cloth.shop_cut = mm(250);
  CHECK(lay_cloth(one, {}, cloth, "red").length_to_buy == doctest::Approx(2250));
  CHECK(lay_cloth({}, {}, cloth, "red").length_to_buy == 0);  // nothing to cut
}

TEST_CASE("short covers share the place beside a long one") {
  const ClothLay lay =
      lay_cloth({cover("A", 1000, 480), cover("B", 500, 480), cover("C", 500, 480)}, {},
                roll(960, 0), "blue");
  CHECK(lay.length == doctest::Approx(1000));
  CHECK(lay.used_fraction == doctest::Approx(1.0));
}

TEST_CASE("a cover wider than the roll is named, the rest is laid") {
  const ClothLay lay =
      lay_cloth({cover("A", 900, 500), cover("B", 900, 400)}, {}, roll(450, 100), "red");
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
  const std::vector<std::vector<ClothJoin>> joins = {{join}, {}};
  ClothKeys cloth = roll(1000, 0);
  cloth.longest_piece = mm(1250);
  const ClothLay lay = lay_cloth({a, cover("B", 700, 480)}, joins, cloth, "red");
  REQUIRE(lay.placements.size() == 3);
  CHECK(lay.placements[0].bumper == "A");
  CHECK(lay.placements[0].piece == "A1");  // 1210 with its allowance
  CHECK(lay.placements[1].piece == "A2");  // 810
  CHECK(lay.placements[2].piece == "B");
  // 1210 and 810 side by side on one length of cloth; 700 fits after neither: on the next length.
  CHECK(lay.length == doctest::Approx(1250 + 700));
  // Uncut cloth takes them in 810 + 700, beside 1210.
  cloth.longest_piece.reset();
  const ClothLay uncut = lay_cloth({a, cover("B", 700, 480)}, joins, cloth, "red");
  CHECK(uncut.length == doctest::Approx(810 + 700));
  CHECK(uncut.used_fraction ==
        doctest::Approx((2020.0 * 480 + 700.0 * 480) / (1510.0 * 1000)));  // allowances in
}

// Worked by hand: bodies 300 by 100, tongues 60 by 50. In line their boxes take 420 + 420. With one
// shifted half a cover up, each tongue lies beside the other's, and the bodies are 60 apart: 300 +
// 60 + 300 and a tongue at each end.
TEST_CASE("tongues of covers in line lie side by side where the roll is wide enough") {
  const std::vector<Pattern> two = {tongued("A", 300, 100, 60, 0), tongued("B", 300, 100, 60, 0)};
  const ClothLay narrow = lay_cloth(two, {}, roll(149, 0), "red");
  CHECK(narrow.length == doctest::Approx(840));
  const ClothLay wide = lay_cloth(two, {}, roll(150, 0), "red");
  CHECK(wide.length == doctest::Approx(780));
  check_apart_and_inside(wide);
  CHECK(wide.used_fraction == doctest::Approx(2 * (300 * 100 + 2 * 60 * 50.0) / (780 * 150)));
}

// Worked by hand: tongues at the top of both covers meet; with one turned half round, its tongues
// lie at the bottom and the others' beside them.
TEST_CASE("a cover is turned half round where it helps, unless the cloth is one-way") {
  const std::vector<Pattern> two = {tongued("A", 300, 100, 60, 25), tongued("B", 300, 100, 60, 25)};
  ClothKeys cloth = roll(100, 0);
  const ClothLay either = lay_cloth(two, {}, cloth, "red");
  CHECK(either.length == doctest::Approx(780));
  CHECK(either.placements[0].turned != either.placements[1].turned);
  check_apart_and_inside(either);
  cloth.one_way = true;
  const ClothLay alike = lay_cloth(two, {}, cloth, "red");
  CHECK(alike.length == doctest::Approx(840));
  CHECK_FALSE(alike.placements[0].turned);
  CHECK_FALSE(alike.placements[1].turned);
}

TEST_CASE("covers lie across only where the job allows it, all of them on one-way cloth") {
  const std::vector<Pattern> three = {cover("A", 900, 300), cover("B", 900, 300),
                                      cover("C", 500, 300)};
  ClothKeys cloth = roll(1000, 0);
  const ClothLay along = lay_cloth(three, {}, cloth, "red");
  CHECK(along.length == doctest::Approx(900));
  for (const ClothPlacement& one : along.placements) CHECK_FALSE(one.across);
  cloth.roll_width = mm(899);  // too narrow for three along, and for a long one across
  CHECK(lay_cloth(three, {}, cloth, "red").length == doctest::Approx(1400));
  cloth.may_lie_across = true;
  const ClothLay mixed = lay_cloth(three, {}, cloth, "red");
  CHECK(mixed.length == doctest::Approx(1200));  // two along, 600 wide, and the short one across
  CHECK(mixed.placements[2].across);
  check_apart_and_inside(mixed);
  cloth.one_way = true;
  CHECK(lay_cloth(three, {}, cloth, "red").length == doctest::Approx(1400));
  cloth.roll_width = mm(900);
  const ClothLay across = lay_cloth(three, {}, cloth, "red");
  CHECK(across.length == doctest::Approx(900));
  for (const ClothPlacement& one : across.placements)
    CHECK(one.across == across.placements[0].across);
}

TEST_CASE("a cover longer than the roll is wide does not lie across it, a wider one not along") {
  ClothKeys cloth = roll(450, 0);
  const std::vector<Pattern> odd = {cover("A", 400, 500)};
  CHECK(lay_cloth(odd, {}, cloth, "red").does_not_fit == std::vector<std::string>{"A"});
  cloth.may_lie_across = true;
  const ClothLay lay = lay_cloth(odd, {}, cloth, "red");
  CHECK(lay.does_not_fit.empty());
  CHECK(lay.placements[0].across);
  CHECK(lay.length == doctest::Approx(500));
}

TEST_CASE("covers of drawn jobs lie apart and inside, turned as their cloth allows") {
  int laid = 0, across = 0, turned = 0, on_pieces = 0;
  test::for_drawn_cases("lay-cloth", 400, [&](std::mt19937_64& rng) {
    Job job = test::drawn_job(rng);
    const auto stood = test::stand(job);
    if (!stood) return;
    const std::vector<Pattern>& patterns = stood->patterns;
    std::vector<std::vector<ClothJoin>> joins(patterns.size());
    ClothKeys& cloth = job.cloth;
    cloth.roll_width = mm(test::drawn(rng, 350, 1600));
    cloth.may_lie_across = rng() % 2 == 0;
    cloth.one_way = rng() % 3 == 0;
    if (rng() % 3 == 0) {
      cloth.may_join = true;
      cloth.longest_piece = mm(test::drawn(rng, 700, 1500));
      for (std::size_t k = 0; k < patterns.size(); ++k)
        if (auto sewn = lay_joins(patterns[k], job, {})) joins[k] = *std::move(sewn);
      ++on_pieces;
    }
    const ClothLay lay = lay_cloth(patterns, joins, cloth, "red");
    check_apart_and_inside(lay);
    CHECK(lay.used_fraction <= 1.0);
    // Only what is larger than the cloth is left out; a seam may make a piece exactly as long.
    for (std::size_t k = 0; k < patterns.size(); ++k)
      for (const ClothPart& part : cloth_parts(patterns[k], joins[k])) {
        if (std::ranges::find(lay.does_not_fit, part.name) == lay.does_not_fit.end()) continue;
        const double most = cloth.longest_piece ? cloth.longest_piece->mm() : 1e9;
        CHECK((part.box.height() > cloth.roll_width.mm() || part.box.width() > most + 1e-6));
      }
    for (const ClothPlacement& one : lay.placements) {
      ++laid;
      across += one.across ? 1 : 0;
      turned += one.turned ? 1 : 0;
      if (one.across) CHECK(cloth.may_lie_across);
      if (one.turned) CHECK_FALSE(cloth.one_way);
      if (cloth.one_way) CHECK(one.across == lay.placements[0].across);
      if (!cloth.longest_piece) continue;
      const double length = cloth.longest_piece->mm();
      const plane::Box box = bounds(one.outline);
      CHECK(std::floor(box.lo.x / length + 1e-5) == std::floor(box.hi.x / length - 1e-5));
    }
  });
  CHECK(laid > 200);
  CHECK(across > 10);
  CHECK(turned > 5);
  CHECK(on_pieces > 20);
}

}  // namespace swathe
