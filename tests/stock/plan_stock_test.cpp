#include <doctest/doctest.h>

#include <numbers>

#include "swathe/stock.hpp"

namespace swathe {
namespace {

// A set of two C-halves of a 700 x 820 mm frame, boards 18 mm, noodles 63.5 mm, front and back
// lapping, 6 mm taken off each free end: the lengths stand in the geometry's worked example (common
// practice, no source).
std::vector<bumper::Piece> boards() {
  std::vector<bumper::Piece> pieces;
  for (const char* bumper : {"A", "B"}) {
    pieces.push_back({bumper, "front", 362, 0, 0, {}, {}, 1});
    pieces.push_back({bumper, "left", 820, 0, 0, {}, {}, 1});
    pieces.push_back({bumper, "back", 362, 0, 0, {}, {}, 1});
  }
  return pieces;
}
std::vector<bumper::Piece> noodles() {
  std::vector<bumper::Piece> pieces;
  for (const char* bumper : {"A", "B"}) {
    pieces.push_back({bumper, "front", 425.5, 0, 0, {}, {}, 2});
    pieces.push_back({bumper, "left", 856, 0, 0, {}, {}, 2});
    pieces.push_back({bumper, "back", 425.5, 0, 0, {}, {}, 2});
  }
  return pieces;
}

Job job() {
  Job result;
  result.boards.thickness = mm(18);
  result.boards.height = mm(127);
  result.padding.diameter = mm(63.5);
  return result;
}

int cuts(const StockPlan& plan) {
  int count = 0;
  for (const StockStick& stick : plan.sticks) count += static_cast<int>(stick.cuts.size());
  return count;
}

}  // namespace

TEST_CASE("both colors of two C-halves are 12 boards and 24 noodles") {
  const Stock stock = plan_stock(job(), boards(), noodles(), {}, {});
  CHECK(cuts(stock.boards) == 12);
  CHECK(cuts(stock.padding) == 24);
  CHECK(stock.boards.too_long.empty());
  // 1544 mm of boards a half, 2438.4 mm (96 in) strips: four halves take 6176 mm, so 3 strips.
  CHECK(stock.boards.sticks.size() == 3);
  // 48 in across, 5 in strips, 1/8 in kerf: 9 strips and 8 kerfs are 46 in, a tenth does not fit.
  CHECK(stock.strips_per_sheet == 9);
  CHECK(stock.sheets == 1);
  // 60 in noodles (1524 mm): a long noodle and one short one, or three short ones; 8 long, 16
  // short.
  CHECK(stock.padding.sticks.size() == 11);
}

// Common practice, no source: from 1 in off each edge at most 3 in apart; 1 1/4 in into the second
// board; a quarter inch is what screws are sold by.
TEST_CASE("screws: two in a joint of 5 in boards, as long as both boards ask") {
  Job own = job();
  own.boards.thickness = inches(23.0 / 32);
  const Screws screws = screws_for(own, 4);
  CHECK(screws.a_joint == 2);  // 5 - 2 = 3 in: one space
  CHECK(screws.count == 16);   // 4 joints, 2 sets
  CHECK(screws.number == 8);
  CHECK(screws.length.inches() == doctest::Approx(2.0));  // 23/32 + 1 1/4 = 1 31/32
  own.boards.height = inches(5.5);
  CHECK(screws_for(own, 4).a_joint == 3);  // 3 1/2 in: two spaces
  own.boards.height = inches(2);
  CHECK(screws_for(own, 4).a_joint == 2);  // never one
  own.cloth.fixing = Fixing::HookAndLoop;
  CHECK(screws_for(own, 4).count == 8);  // one set of boards
  own.units = Units::Millimeters;
  CHECK(screws_for(own, 4).length.mm() == doctest::Approx(50));  // 18.3 + 31.75 = 50.0
  CHECK(screws_for(own, 0).count == 0);
}

// By hand: a steel wire of 3.2 mm (0.8 of 4 mm) and 50.8 mm long is 408.6 mm3, times 7.85 mg.
TEST_CASE("screws are weighed with the other fasteners of their bumper") {
  Pattern a;
  a.bumper = "A";
  a.corners.resize(2);
  Job own = job();
  own.boards.thickness = inches(23.0 / 32);
  const Stock stock = plan_stock(own, {}, {}, {a}, {});
  CHECK(stock.screws.count == 8);
  CHECK(stock.weights[0].fasteners_g == doctest::Approx(4 * 3.207).epsilon(0.001));
}

TEST_CASE("one color takes one set") {
  Job one = job();
  one.cloth.colors.resize(1);
  const Stock stock = plan_stock(one, boards(), noodles(), {}, {});
  CHECK(cuts(stock.boards) == 6);
  CHECK(cuts(stock.padding) == 12);
  CHECK(stock.cloth.size() == 1);
}

TEST_CASE("covers that are changed take one set of boards and padding, and cloth of every color") {
  Job changed = job();
  changed.cloth.fixing = Fixing::HookAndLoop;
  CHECK(padded_sets(job()) == 2);
  CHECK(padded_sets(changed) == 1);
  const Stock stock = plan_stock(changed, boards(), noodles(), {}, {});
  CHECK(cuts(stock.boards) == 6);
  CHECK(cuts(stock.padding) == 12);
  CHECK(stock.cloth.size() == 2);
}

TEST_CASE("a sheet narrower than a board gives no board") {
  Job narrow = job();
  narrow.boards.stock = {mm(100), mm(2000)};
  const Stock stock = plan_stock(narrow, boards(), noodles(), {}, {});
  CHECK(stock.strips_per_sheet == 0);
  CHECK(stock.sheets == 0);
  CHECK(stock.boards.too_long.size() == 12);
}

TEST_CASE("weights are volumes times densities") {
  Pattern a, b;
  a.bumper = "A";
  b.bumper = "B";
  a.cloth_area = b.cloth_area = 0.8e6;  // mm2
  const Stock stock = plan_stock(job(), boards(), noodles(), {a, b}, {});
  REQUIRE(stock.weights.size() == 2);
  // 1.544 m x 18 mm x 127 mm of 600 kg/m3
  CHECK(stock.weights[0].boards_g == doctest::Approx(1.544 * 0.018 * 0.127 * 600 * 1000));
  // noodles of 63.5 mm, 30 kg/m3
  CHECK(stock.weights[0].padding_g ==
        doctest::Approx(2 * 1.707 * std::numbers::pi * 0.03175 * 0.03175 * 30 * 1000));
  CHECK(stock.weights[0].cloth_g == doctest::Approx(280));  // 0.8 m2 of 350 g/m2
  CHECK(stock.set.together_g() ==
        doctest::Approx(2 * (stock.weights[0].boards_g + stock.weights[0].padding_g +
                             stock.weights[0].cloth_g)));
}

TEST_CASE("strips that fill hollows at corners are weighed with the padding") {
  Pattern a;
  a.bumper = "A";
  a.corners.resize(2);
  a.corners[0].turn_deg = a.corners[1].turn_deg = 90;
  const auto padding_g = [&] { return plan_stock(job(), {}, {}, {a}, {}).weights[0].padding_g; };
  CHECK(padding_g() == 0);
  a.corners[0].filled = true;
  // Two noodles of 63.5 mm have 8 hollows, as long as the noodles are deep. A strip's short sides
  // are 31.75 (2 - 1.414214) = 18.5987 mm; half their square is 172.956 mm2. 8 x 63.5 x 172.956 mm3
  // are 87.862 cm3, of 30 kg/m3.
  CHECK(padding_g() == doctest::Approx(87.862 * 0.030).epsilon(1e-4));
  a.corners[1].filled = true;
  CHECK(padding_g() == doctest::Approx(2 * 87.862 * 0.030).epsilon(1e-4));
}

TEST_CASE("fasteners are weighed: staples, brackets, hook-and-loop") {
  Pattern a, b;
  a.bumper = "A";
  b.bumper = "B";
  a.staples.resize(85);
  b.strips = {plane::line({0, 0}, {500, 0}), plane::line({0, 0}, {0, 300})};
  Job own = job();
  own.brackets.resize(3);
  a.brackets.resize(2);
  a.brackets[0].keys = 0;
  a.brackets[1].keys = 1;
  b.brackets.resize(1);
  b.brackets[0].keys = 2;
  own.brackets[0].mass_g = 250;
  own.brackets[2].mass_g = 100;
  own.cloth.staple_g = 0.2;
  own.cloth.hook_and_loop.strip = mm(25);
  own.cloth.hook_and_loop.density_kg_m2 = 0.8;
  const Stock stock = plan_stock(own, {}, {}, {a, b}, {});
  CHECK(stock.weights[0].fasteners_g == doctest::Approx(85 * 0.2 + 250));
  CHECK(stock.weights[0].unknown_brackets == 1);
  // 0.8 m by 25 mm of 800 g/m2
  CHECK(stock.weights[1].fasteners_g == doctest::Approx(0.8 * 0.025 * 800 + 100));
  CHECK(stock.set.unknown_brackets == 1);
  CHECK(stock.set.together_g() == doctest::Approx(267 + 116));
}

// Steel is 7.85 g/cm3 (EN 1991-1-1, table A.4: 78.5 kN/m3); a staple of 10 mm crown and legs, of
// wire 1.2 by 0.6 mm, is 30 mm of it. Common practice, no source, for its size.
TEST_CASE("a staple weighs what its wire does") {
  CHECK(ClothKeys().staple_g == doctest::Approx(3.0 * 0.12 * 0.06 * 7.85).epsilon(0.02));
}

TEST_CASE("a mitred board is as long as its middle line") {
  const EndCut cut{EndCut::Kind::Mitred, 45, 18, 0};
  bumper::Piece mitred{"A", "front", 500, 0, 0, cut, cut, 1};
  Pattern a;
  a.bumper = "A";
  const Stock stock = plan_stock(job(), {mitred}, {}, {a}, {});
  // Outer edge 500, inner edge 464: a trapezium's area is its height times the mean of both.
  CHECK(stock.weights[0].boards_g == doctest::Approx(0.482 * 0.018 * 0.127 * 600 * 1000));
}

}  // namespace swathe
