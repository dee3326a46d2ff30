#include <doctest/doctest.h>

#include "swathe/stock.hpp"

namespace swathe {
namespace {

constexpr double kInch = 25.4;

std::vector<StockCut> equal(int count, double length) {
  return std::vector<StockCut>(static_cast<std::size_t>(count), StockCut{"A front", length});
}

}  // namespace

// Saw trade, as a worked example of the kerf: four 24 in pieces do not come out of a 96 in board;
// with three cuts of 1/8 in the last is 3/8 in short (slashgear.com/1866963).
TEST_CASE("four 24 in pieces come out of 96 in only if the saw takes nothing") {
  CHECK(cut_sticks(equal(4, 24 * kInch), 96 * kInch, 0).sticks.size() == 1);
  CHECK(cut_sticks(equal(4, 24 * kInch), 96 * kInch, kInch / 8).sticks.size() == 2);
  CHECK(cut_sticks(equal(4, 24 * kInch), (96 + 3.0 / 8) * kInch, kInch / 8).sticks.size() == 1);
  CHECK(cut_sticks(equal(4, 24 * kInch), (96 + 2.9 / 8) * kInch, kInch / 8).sticks.size() == 2);
}

TEST_CASE("a piece as long as the stick fits, whatever the kerf") {
  const StockPlan plan = cut_sticks(equal(2, 60 * kInch), 60 * kInch, kInch / 8);
  CHECK(plan.sticks.size() == 2);
  CHECK(plan.too_long.empty());
  CHECK(plan.used_fraction == doctest::Approx(1.0));
}

TEST_CASE("a piece longer than the stick is named, the others are cut") {
  const StockPlan plan = cut_sticks({{"A front", 1600}, {"A left", 700}}, 1524, 0);
  REQUIRE(plan.too_long.size() == 1);
  CHECK(plan.too_long[0].label == "A front");
  REQUIRE(plan.sticks.size() == 1);
  CHECK(plan.sticks[0].cuts[0].label == "A left");
  CHECK(plan.used_fraction == doctest::Approx(700.0 / 1524.0));
}

TEST_CASE("thirds of a stick fit although a third is no decimal") {
  CHECK(cut_sticks(equal(3, 1000.0 / 3.0), 1000, 0).sticks.size() == 1);
  CHECK(cut_sticks(equal(6, 2000.0 / 3.0), 2000, 0).sticks.size() == 2);
}

TEST_CASE("every label comes out once, and sticks cut alike stand together") {
  const StockPlan plan = cut_sticks(
      {{"A front", 500}, {"B front", 900}, {"C", 900}, {"D", 100}, {"E", 500}, {"F", 100}}, 1000,
      0);
  CHECK(plan.sticks.size() == 3);
  CHECK(plan.sticks[0].cuts.size() == 2);
  CHECK(plan.sticks[0].cuts[0].label == "B front");
  CHECK(plan.sticks[1].cuts[0].label == "C");
  CHECK(plan.sticks[2].cuts[0].label == "A front");
  CHECK(plan.sticks[2].cuts[1].label == "E");
}

TEST_CASE("no pieces, no sticks") {
  const StockPlan plan = cut_sticks({}, 1000, 3);
  CHECK(plan.sticks.empty());
  CHECK(plan.used_fraction == doctest::Approx(0));
}

}  // namespace swathe
