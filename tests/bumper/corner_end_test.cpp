#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <utility>

#include "support/drawn_jobs.hpp"
#include "support/jobs.hpp"
#include "swathe/bumper.hpp"

// Bumpers that meet at a corner which neither of them turns: one runs past, the other stops at it.
namespace swathe {
namespace {

constexpr double kInch = 25.4;

/// Frame 28 by 30 in with 1/16 in of play, boards of 23/32 in, two noodles of 2 1/2 in, ends 1/4 in
/// short of what they meet.
Job one_a_side() {
  Job job;
  job.frame = test::rectangle_frame(28 * kInch, 30 * kInch);
  job.frame.fit = inches(1.0 / 16);
  job.boards.thickness = inches(23.0 / 32);
  job.boards.height = inches(5);
  job.padding.diameter = inches(2.5);
  job.padding.stack = 2;
  for (const char* side : {"front", "left", "back", "right"})
    job.bumpers.push_back({side, {side, RunEnd::Corner{}}, {side, RunEnd::Corner{}}, inches(0.25)});
  return job;
}

struct Pieces {
  std::vector<bumper::Piece> boards, padding;
};
Pieces pieces_of(const Job& job, const std::vector<Wrap>& wraps) {
  Pieces pieces;
  for (const Wrap& wrap : wraps) {
    const auto boards =
        board_pieces(wrap.frame(), wrap.section(), wrap.run(), job.boards, job.places);
    const auto padding =
        padding_pieces(wrap.frame(), wrap.section(), wrap.run(), job.padding, job.places);
    REQUIRE(boards.has_value());
    REQUIRE(padding.has_value());
    pieces.boards.insert(pieces.boards.end(), boards->begin(), boards->end());
    pieces.padding.insert(pieces.padding.end(), padding->begin(), padding->end());
  }
  return pieces;
}

TEST_CASE("an end that stops at its neighbor does so where its padding is cut flush, too") {
  // Boards of 0.36 in: the padding would stop 0.36 in further than its board, too little to be
  // covered.
  Job job = one_a_side();
  job.boards.thickness = inches(0.36);
  const std::vector<Wrap> wraps = test::wraps_of(job);
  CHECK(wraps[1].run().bare(true) == 0);
  const Pieces pieces = pieces_of(job, wraps);
  for (const auto& [piece, kind] : {std::pair{pieces.boards[0], EndCut::Kind::Laps},
                                    std::pair{pieces.boards[1], EndCut::Kind::Butts},
                                    std::pair{pieces.padding[1], EndCut::Kind::Butts}}) {
    CHECK(piece.start.kind == kind);
    CHECK(piece.end.kind == kind);
  }
  // Open where it ends somewhere else.
  job.bumpers[1].to.at = RunEnd::Share{0.5};
  CHECK(pieces_of(job, test::wraps_of(job)).boards[1].end.kind == EndCut::Kind::Free);
}

TEST_CASE("one a side: boards end at the neighbors' boards, padding alone goes on") {
  const Job job = one_a_side();
  const std::vector<Wrap> wraps = test::wraps_of(job);
  const Pieces pieces = pieces_of(job, wraps);
  REQUIRE(pieces.boards.size() == 4);
  REQUIRE(pieces.padding.size() == 4);
  // By hand. With its play the frame is 28 1/8 by 30 1/8 in.
  // Front board, to the front faces of the side boards: 28 1/8 + 2 (23/32 - 1/4) = 29 1/16.
  CHECK(pieces.boards[0].length_mm / kInch == doctest::Approx(29.0625));
  // Side board, between the backs of the front and back boards: 30 1/8 - 2 (1/4) = 29 5/8.
  CHECK(pieces.boards[1].length_mm / kInch == doctest::Approx(29.625));
  // Front noodles, to the outer faces of the side noodles: 28 1/8 + 2 (23/32 + 2 1/2 - 1/4)
  // = 34 1/16.
  CHECK(pieces.padding[0].length_mm / kInch == doctest::Approx(34.0625));
  // Side noodles, between the backs of the front and back noodles: 30 1/8 + 2 (23/32 - 1/4)
  // = 31 1/16.
  CHECK(pieces.padding[1].length_mm / kInch == doctest::Approx(31.0625));
  CHECK(pieces.padding[0].count == 2);
  // Past the boards: (34 1/16 - 29 1/16) / 2 = 2 1/2, a noodle; (31 1/16 - 29 5/8) / 2 = 23/32, a
  // board.
  const std::vector<Overhang> past = overhangs(pieces.boards, pieces.padding);
  for (const std::size_t front : {0u, 2u}) {
    CHECK(past[front].at_start / kInch == doctest::Approx(2.5));
    CHECK(past[front].at_end / kInch == doctest::Approx(2.5));
    CHECK(past[front + 1].at_start / kInch == doctest::Approx(23.0 / 32));
    CHECK(past[front + 1].at_end / kInch == doctest::Approx(23.0 / 32));
  }
  // The cover reaches as far as the padding.
  CHECK(wraps[0].run().length / kInch == doctest::Approx(34.0625));
  CHECK(wraps[1].run().length / kInch == doctest::Approx(31.0625));
}

TEST_CASE("one a side: whatever meets at a corner keeps the clearance") {
  const Job job = one_a_side();
  std::vector<Run> runs;
  const std::vector<Wrap> wraps = test::wraps_of(job);
  for (const Wrap& wrap : wraps) runs.push_back(wrap.run());
  const auto gaps = gaps_between(wraps[0].frame(), wraps[0].section(), runs, job.places);
  REQUIRE(gaps.has_value());
  for (const double gap : *gaps) CHECK(gap / kInch == doctest::Approx(0.25));
}

TEST_CASE("ends at corners of any turn up to a right angle touch without clearance") {
  for (const int sides : {4, 6, 8, 10, 12}) {
    CAPTURE(sides);
    Job job = one_a_side();
    job.frame.corners.clear();
    job.frame.sides.clear();
    job.bumpers.clear();
    job.padding.lapping.clear();
    for (int k = 0; k < sides; ++k) {
      const std::string side = "side" + std::to_string(k);
      job.frame.corners.push_back(600.0 * plane::direction(2 * std::numbers::pi * k / sides));
      job.frame.sides.push_back(side);
      if (k % 2 == 0) job.padding.lapping.push_back(side);
      job.bumpers.push_back({side, {side, RunEnd::Corner{}}, {side, RunEnd::Corner{}}, mm(0)});
    }
    const auto stood = test::stand(job);
    REQUIRE(stood.has_value());  // bumpers that overlap are refused
    for (const double gap : stood->gaps) CHECK(std::abs(gap) < 1e-3);
  }
}

TEST_CASE("past a board's end the cloth goes round the padding, as its own girth tells") {
  const Job job = one_a_side();
  const Wrap wrap = test::wraps_of(job)[0];
  const Section& section = wrap.section();
  // Once round two noodles of 2 1/2 in: two flats of 2 1/2 in and a circle, and pi times the cloth.
  const double girth =
      2 * 2.5 * kInch + std::numbers::pi * (2.5 * kInch + job.cloth.thickness.mm());
  CHECK(2 * section.bare_half_girth() == doctest::Approx(girth));
  // Half a cloth's thickness behind the padding's back, at half the boards' height.
  const auto back = wrap.at({10.0, section.bare_half_girth()});
  REQUIRE(back.has_value());
  const FrameSide& front = wrap.frame().sides()[0];
  const double out = dot(FlatPoint{back->x, back->y} - front.from, front.outward);
  CHECK(out == doctest::Approx(23.0 / 32 * kInch - 0.5 * job.cloth.thickness.mm()));
  CHECK(back->z == doctest::Approx(wrap.frame().floor_gap().mm() + 2.5 * kInch));
  // Beside the board there is cloth on its back at that height of the girth.
  const auto flap = wrap.at({10.0 + 2.5 * kInch, section.bare_half_girth()});
  REQUIRE(flap.has_value());
  CHECK(dot(FlatPoint{flap->x, flap->y} - front.from, front.outward) ==
        doctest::Approx(-0.5 * job.cloth.thickness.mm()));
}

TEST_CASE("past a board's end: from the cloth to space and back") {
  test::for_drawn_cases("wrap-bare", 300, [](std::mt19937_64& rng) {
    const Job job = test::drawn_one_a_side(rng);
    const auto stood = test::stand(job);
    if (!stood) return;
    const Wrap& wrap = stood->wraps[rng() % 4];
    const bool start = rng() % 2 == 0;
    const double bare = wrap.run().bare(start);
    if (bare == 0) return;
    const double in = test::drawn(rng, 0, 0.99 * bare);
    const double half = wrap.section().bare_half_girth();
    const ClothPoint p{start ? in : wrap.run().length - in, test::drawn(rng, -half, half)};
    const auto at = wrap.at(p);
    REQUIRE(at.has_value());
    const auto back = wrap.cloth_at(*at);
    REQUIRE(back.has_value());
    CHECK(std::hypot(back->s - p.s, back->u - p.u) < 1e-4);
    // s and u are measured in cloth, on one flat or round.
    const auto beside = wrap.at({p.s + (start ? 1e-3 : -1e-3), p.u});
    const auto above = wrap.at({p.s, p.u + (p.u < 0 ? 1e-3 : -1e-3)});
    REQUIRE(beside.has_value());
    REQUIRE(above.has_value());
    CHECK(apart(*at, *beside) == doctest::Approx(1e-3));
    CHECK(apart(*at, *above) == doctest::Approx(1e-3).epsilon(1e-3));
  });
}

TEST_CASE("padding that would hang is refused, with what to give") {
  Job job = one_a_side();
  job.frame.corners = {{900, 0}, {450, 780}, {0, 0}};  // turns of 120 deg
  job.frame.sides = {"front", "left", "back"};
  job.bumpers = {{"A", {"front", RunEnd::Corner{}}, {"front", RunEnd::Share{0.5}}, mm(6)}};
  job.places.set("bumper.0.from", {"job.toml", 20, 8});
  const auto frame = Frame::make(job.frame, job.places);
  REQUIRE(frame.has_value());
  const auto run =
      make_run(*frame, test::section_of(job), job.padding, job.bumpers[0], 0, job.places);
  REQUIRE_FALSE(run.has_value());
  CHECK(run.error()[0].why == Why::DoesNotFit);
  CHECK(run.error()[0].place.line == 20);
  CHECK(run.error()[0].sentence.find("give \"0%\" instead of \"corner\"") != std::string::npos);
  job.bumpers[0].from.at = RunEnd::Share{0.0};
  CHECK(test::wraps_of(job).size() == 1);
}

TEST_CASE("padding that would run on past its board by a sliver ends with it") {
  // Half the depth's tangent: corners of 5 deg leave (2 1/2) tan 2.5 = 0.11 in past the board.
  Job job = one_a_side();
  job.frame.corners = {{1000, 1000},
                       {500, 1000 + 500 * std::tan(std::numbers::pi / 36)},
                       {0, 1000},
                       {0, 0},
                       {1000, 0}};
  job.frame.sides = {"front", "more", "left", "back", "right"};
  job.padding.lapping = {"front", "left"};
  job.bumpers = {{"A", {"front", RunEnd::Share{0.5}}, {"front", RunEnd::Corner{}}, mm(6)}};
  const Wrap wrap = test::wraps_of(job)[0];
  CHECK(wrap.run().bare(false) == 0.0);
}

}  // namespace
}  // namespace swathe
