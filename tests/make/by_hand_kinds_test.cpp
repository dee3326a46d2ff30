#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "support/examples.hpp"
#include "swathe/job.hpp"
#include "swathe/make.hpp"

// Boards, padding, cloth and a hole to punch of one job of each kind, worked out by hand. The frame
// is 28 by 30 in with 1/16 in of play all round, but where said; boards are 23/32 in thick, ends
// stand back 1/4 in, padding is 2 1/2 in deep, cloth 0.5 mm thick. Fractions of an inch:
// 23/32 = 0.71875; 23/32 + 2 1/2 = 3.21875.
namespace swathe {
namespace {

constexpr double kInch = 25.4;
constexpr double kHalfFront = 13.8125;  // 28 1/8 / 2 - 1/4
constexpr double kSide = 30.125;

/// Along the middle of the cloth, mm: across a front of 63.5; two quarter circles of 31.75 + 0.25,
/// 100.5310; top and bottom of 31.75 + 18.25625 each, 100.0125; two bends of 0.25, 0.7854; two
/// flaps of 50.8: 366.4289.
constexpr double kWidth = 366.4289;
/// A hole 3/4 in from a bracket's top that is 1/2 in below the board's: from the front's middle,
/// half of the above less the flap, 132.4144, and 1 1/4 in, 31.75.
constexpr double kHoleUp = 164.1644;
/// It is 3 in and 3/4 in from the free end of the board: 95.25.
constexpr double kHoleAlong = 95.25;
/// A tongue: down the end, 63.5 + 18.25625; two bends of 0.25, 0.7854; 2 in on the back, 50.8.
constexpr double kTongue = 133.3417;

/// How much longer the cloth's middle is on each side of a corner of 90 deg: 3.21875 in and 0.25
/// mm.
constexpr double kSquareCorner = 3.21875 + 0.25 / kInch;

struct Kind {
  std::string name;
  std::vector<double> boards, padding;  ///< of bumper A, inches
  double front = 0;                     ///< along the front, end to end, inches
  double width = kWidth, tongue = kTongue, hole_along = kHoleAlong, hole_up = kHoleUp;  ///< mm
  Length bracket_at = inches(3);
};

/// With a bracket so far from the end of bumper A's first board.
Made with_bracket(const std::string& name, Length at) {
  JobReading reading = read_job(test::bytes_of(test::example("kinds/" + name)), name + ".toml");
  REQUIRE(reading.faults.empty());
  Job job = reading.job;
  const auto bare = make(job);
  REQUIRE_MESSAGE(bare.has_value(), to_text(bare.error().front()));
  const RunSide& leg = bare->wraps[0].run().sides.front();
  const std::string& before =
      bare->frame.sides()[static_cast<std::size_t>(bare->frame.previous(leg.side))].name;
  BracketKeys bracket;
  bracket.side = job.bumpers.front().from.side;
  bracket.at =
      FromCorner{bare->frame.from_corner(leg.side, leg.board_from() + at.mm(), before), before};
  bracket.width = inches(3);
  bracket.height = inches(1.5);
  bracket.down = inches(0.5);
  bracket.holes = {{0.75 * kInch, 0.75 * kInch}};
  bracket.cloth = BracketCloth::Under;
  job.brackets = {bracket};
  const auto made = make(job);
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  return *made;
}

/// Lengths of bumper A's pieces, inches.
std::vector<double> of_a(const std::vector<bumper::Piece>& pieces) {
  std::vector<double> lengths;
  for (const bumper::Piece& piece : pieces)
    if (piece.bumper == "A") lengths.push_back(piece.length_mm / kInch);
  return lengths;
}

void check_lengths(const std::vector<double>& lengths, const std::vector<double>& by_hand) {
  REQUIRE(lengths.size() == by_hand.size());
  // A corner of the hexagon is given to a thousandth of an inch.
  for (std::size_t k = 0; k < lengths.size(); ++k) CHECK(std::abs(lengths[k] - by_hand[k]) < 0.001);
}

void check_kind(const Kind& kind) {
  CAPTURE(kind.name);
  const Made made = with_bracket(kind.name, kind.bracket_at);
  check_lengths(of_a(made.boards), kind.boards);
  check_lengths(of_a(made.padding), kind.padding);
  const Pattern& pattern = made.patterns[0];
  CHECK(std::abs(pattern.length / kInch - kind.front) < 0.001);
  CHECK(pattern.cloth_width == doctest::Approx(kind.width).epsilon(1e-6));
  CHECK(std::abs(pattern.cloth_length - (kind.front * kInch + 2 * kind.tongue)) < 0.03);
  REQUIRE(pattern.brackets.size() == 1);
  REQUIRE(pattern.brackets[0].holes.size() == 1);
  const FlatPoint hole = pattern.brackets[0].holes[0].at;
  CHECK(hole.x == doctest::Approx(kind.hole_along).epsilon(1e-6));
  CHECK(hole.y == doctest::Approx(kind.hole_up).epsilon(1e-6));
}

}  // namespace

TEST_CASE("by hand: c-halves") {
  // Front and back boards run past the side's, padding past the side's padding.
  check_kind({"c-halves",
              {kHalfFront + 0.71875, kSide, kHalfFront + 0.71875},
              {kHalfFront + 3.21875, kSide + 2 * 0.71875, kHalfFront + 3.21875},
              2 * kHalfFront + kSide + 4 * kSquareCorner});
}

TEST_CASE("by hand: short-leg and opening, whose legs are as long as the job says") {
  for (const char* const name : {"short-leg", "opening"}) {
    CAPTURE(name);
    // Further from the corner, where the cloth is square: 1 in and 3/4 in along.
    const Length at = inches(1);
    const Made made = with_bracket(name, at);
    const std::vector<RunSide>& sides = made.wraps[0].run().sides;
    const double leg = (sides.front().to_x - sides.front().from_x) / kInch;
    const double last = (sides.back().to_x - sides.back().from_x) / kInch;
    if (sides.size() == 3)
      check_kind({name,
                  {leg + 0.71875, kSide, last + 0.71875},
                  {leg + 3.21875, kSide + 2 * 0.71875, last + 3.21875},
                  leg + kSide + last + 4 * kSquareCorner,
                  kWidth,
                  kTongue,
                  44.45,
                  kHoleUp,
                  at});
    else  // all round: the back of 28 1/8 in runs past at both ends
      check_kind({name,
                  {leg + 0.71875, kSide, 28.125 + 2 * 0.71875, kSide, last + 0.71875},
                  {leg + 3.21875, kSide + 2 * 0.71875, 28.125 + 2 * 3.21875, kSide + 2 * 0.71875,
                   last + 3.21875},
                  leg + 2 * kSide + 28.125 + last + 8 * kSquareCorner,
                  kWidth,
                  kTongue,
                  44.45,
                  kHoleUp,
                  at});
  }
}

TEST_CASE("by hand: corner-pieces") {
  // Half of the side less 1/4 in: 15 1/16 - 1/4 = 14 13/16.
  check_kind({"corner-pieces",
              {kHalfFront + 0.71875, 14.8125},
              {kHalfFront + 3.21875, 14.8125 + 0.71875},
              kHalfFront + 14.8125 + 2 * kSquareCorner});
}

TEST_CASE("by hand: sewn") {
  // Padding is mitred: as long outside on both sides of a corner.
  check_kind({"sewn",
              {kHalfFront + 0.71875, kSide, kHalfFront + 0.71875},
              {kHalfFront + 3.21875, kSide + 2 * 3.21875, kHalfFront + 3.21875},
              2 * kHalfFront + kSide + 4 * kSquareCorner});
}

TEST_CASE("by hand: bent") {
  // Boards are mitred. Padding is one piece, measured along its middle: straight up to the boards'
  // corner, 0.71875, then half a quarter circle of 1 1/4 in, 0.98175, on each side of a corner. The
  // cloth's is one of 2 1/2 in and 0.25 mm, 1.97123.
  check_kind({"bent",
              {kHalfFront + 0.71875, kSide + 2 * 0.71875, kHalfFront + 0.71875},
              {2 * kHalfFront + kSide + 4 * (0.71875 + 0.98175)},
              2 * kHalfFront + kSide + 4 * (0.71875 + 1.97123)});
}

TEST_CASE("by hand: block") {
  // Edges rounded by 3/4 in. Once round: a front of 127 - 38.1 = 88.9; two quarter circles of 19.05
  // + 0.25, 60.6327; top and bottom of 63.5 - 19.05 + 18.25625, 125.4125; the bends 0.7854:
  // 275.7306, and two flaps, 377.3306. The hole: half of 275.7306, and 31.75, is 169.6153.
  check_kind({"block",
              {kHalfFront + 0.71875, kSide, kHalfFront + 0.71875},
              {kHalfFront + 3.21875, kSide + 2 * 0.71875, kHalfFront + 3.21875},
              2 * kHalfFront + kSide + 4 * kSquareCorner,
              377.3306,
              kTongue,
              kHoleAlong,
              169.6153});
}

TEST_CASE("by hand: hook-and-loop") {
  // Its play is 3/16 in: 28 3/8 / 2 - 1/4 = 13.9375, and 30 3/8. Flaps and hems of 73.025 each;
  // 1 % is taken off across: 0.99 (264.8289 + 146.05) = 406.7701, and 0.99 x 164.1644 = 162.5228.
  check_kind({"hook-and-loop",
              {13.9375 + 0.71875, 30.375, 13.9375 + 0.71875},
              {13.9375 + 3.21875, 30.375 + 2 * 0.71875, 13.9375 + 3.21875},
              2 * 13.9375 + 30.375 + 4 * kSquareCorner,
              406.7701,
              kTongue,
              kHoleAlong,
              162.5228});
}

TEST_CASE("by hand: hexagon") {
  // A side of 16 in grows by 2 (1/16) tan 30 deg: 16.07217. Half of it less 1/4 in: 7.78608. Mitres
  // add tan 30 deg = 0.57735 of the depth: 0.41497 on boards, 1.85835 on padding, 1.86403 on the
  // cloth's middle.
  check_kind(
      {"hexagon",
       {7.78608 + 0.41497, 16.07217 + 2 * 0.41497, 16.07217 + 2 * 0.41497, 7.78608 + 0.41497},
       {7.78608 + 1.85835, 16.07217 + 2 * 1.85835, 16.07217 + 2 * 1.85835, 7.78608 + 1.85835},
       2 * 7.78608 + 2 * 16.07217 + 6 * 1.86403});
}

TEST_CASE("by hand: chamfered") {
  // Sides of 20 (front, back), 22 (left) and 4 x 1.41421 = 5.65685 in (cut corners). The play adds
  // (1/16) tan 22.5 deg = 0.02589 at each end: 20.05178, 22.05178, 5.70863. The front is halved,
  // the back goes to 80 % of its own
  // 20 in: 10.02589 and 16.02589 less 1/4 in. Mitres add 0.41421 of the depth:
  // 0.29772 on boards, 1.33325 on padding, 1.33733 on the cloth's middle.
  check_kind({"chamfered",
              {9.77589 + 0.29772, 5.70863 + 2 * 0.29772, 22.05178 + 2 * 0.29772,
               5.70863 + 2 * 0.29772, 15.77589 + 0.29772},
              {9.77589 + 1.33325, 5.70863 + 2 * 1.33325, 22.05178 + 2 * 1.33325,
               5.70863 + 2 * 1.33325, 15.77589 + 1.33325},
              9.77589 + 2 * 5.70863 + 22.05178 + 15.77589 + 8 * 1.33733});
}

TEST_CASE("by hand: one-a-side") {
  // A runs past its neighbors: 28 1/8 + 2 (0.71875 - 1/4) = 29.0625 of board; padding 2 1/2 in more
  // at each end, and so much of it has no board. The tongue: down the padding's end, 63.5; back
  // along it, 63.5; down the board's end, 18.25625; 50.8 on the back; three bends of 0.25, 1.1781;
  // less twice 0.25 in the corner behind the padding: 196.7343. The hole is 63.5 further along.
  check_kind({"one-a-side", {29.0625}, {34.0625}, 34.0625, kWidth, 196.7343, 158.75});
}

}  // namespace swathe
