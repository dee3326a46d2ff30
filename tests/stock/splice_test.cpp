#include "stock/splice.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "support/examples.hpp"
#include "support/made.hpp"

// A hand's breadth between a joint and a corner or an end: 4 in, common practice, no source. All
// else is arithmetic written out beside each check.
namespace swathe {
namespace {

constexpr double kInch = 25.4;

/// A bent piece with these corners, inches from its start.
bumper::Piece bent(double length, std::vector<double> corners) {
  bumper::Piece piece;
  piece.bumper = "A";
  piece.side = "front + left";
  piece.length_mm = length * kInch;
  for (const double corner : corners) piece.bends.push_back(corner * kInch);
  return piece;
}

/// Its joints, whole inches from its start; -1 where one is not whole.
std::vector<int> joints_in(const bumper::Piece& piece, double stock) {
  const auto splice = splice_of(piece, stock * kInch);
  REQUIRE(splice);
  std::vector<int> joints;
  for (const double joint : splice->joints) {
    const double nearest = std::round(joint / kInch);
    joints.push_back(std::abs(joint - nearest * kInch) < 1e-6 ? static_cast<int>(nearest) : -1);
  }
  return joints;
}

}  // namespace

TEST_CASE("splices: as far along as the stock reaches, and never at a corner or an end") {
  const bumper::Piece piece = bent(66, {16, 50});
  CHECK_FALSE(splice_of(piece, 66 * kInch));  // one is long enough
  // 60 is 10 past the corner at 50, and 6 before the end.
  CHECK(joints_in(piece, 60) == std::vector<int>{60});
  // 63 is 3 before the end: back to 66 - 4.
  CHECK(joints_in(piece, 63) == std::vector<int>{62});
  // 52 is 2 past the corner: back to 50 - 4. 66 - 46 = 20 is left.
  CHECK(joints_in(piece, 52) == std::vector<int>{46});
  // 19 is 3 past the first corner: back to 12; 12 + 19 = 31, 31 + 19 = 50: back to 46, 46 + 19 =
  // 65: back to 62.
  CHECK(joints_in(piece, 19) == std::vector<int>{12, 31, 46, 62});
}

TEST_CASE("splices: the parts are the piece, each no longer than the stock") {
  const auto splice = splice_of(bent(66, {16, 50}), 52 * kInch);
  REQUIRE(splice);
  const std::vector<StockCut> parts = parts_of(*splice);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].label == "A front to left 1");
  CHECK(parts[0].length / kInch == doctest::Approx(46));
  CHECK(parts[1].label == "A front to left 2");
  CHECK(parts[1].length / kInch == doctest::Approx(20));
}

TEST_CASE("splices: where every place is at a corner, longer stock is asked for") {
  // Corners 6 apart leave no clear place between 4 after the first and 4 before the second: from 6
  // (10 - 4) to 20 (16 + 4) nothing is clear, which is 14.
  const bumper::Piece close = bent(60, {10, 16});
  CHECK(least_to_splice(close) / kInch == doctest::Approx(14));
  CHECK_FALSE(splice_of(close, 13.9 * kInch));
  CHECK(joints_in(close, 14).front() == 6);
}

TEST_CASE("bent noodles too long for one are bought in parts: every part, and never none") {
  // The frame of the example is 28 by 30 in, half a front and half a back and a left side: longer
  // than a noodle of 60 in by what lies outside the frame.
  const Made made =
      test::made(test::bytes_of(SWATHE_SOURCE "/examples/kinds/bent.toml"), "bent.toml");
  const StockPlan& plan = made.stock.padding;
  REQUIRE(plan.splices.size() == made.padding.size());
  CHECK(plan.too_long.empty());
  double needed = 0, cut = 0;
  for (const bumper::Piece& piece : made.padding) {
    CHECK(piece.length_mm > 60 * kInch);
    REQUIRE(piece.bends.size() == 2);
    CHECK(0 < piece.bends[0]);
    CHECK(piece.bends[0] < piece.bends[1]);
    CHECK(piece.bends[1] < piece.length_mm);
    needed += piece.length_mm * piece.count * padded_sets(made.job);
  }
  for (const StockStick& stick : plan.sticks)
    for (const StockCut& one : stick.cuts) cut += one.length;
  CHECK(cut == doctest::Approx(needed));
  CHECK(static_cast<double>(plan.sticks.size()) * 60 * kInch >= needed);
  for (const Splice& splice : plan.splices)
    for (const double joint : splice.joints)
      for (const double corner : made.padding.front().bends)
        CHECK(std::abs(joint - corner) >= 4 * kInch - 1e-6);
}

}  // namespace swathe
