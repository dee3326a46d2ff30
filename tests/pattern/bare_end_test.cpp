#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "support/drawn_jobs.hpp"
#include "support/jobs.hpp"
#include "swathe/pattern.hpp"

// The cover's ends where padding runs on past its board.
namespace swathe {
namespace {

constexpr double kInch = 25.4, kPi = std::numbers::pi;

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

test::Stood standing(const Job& job) {
  const auto stood = test::stand(job);
  REQUIRE(stood.has_value());
  return *stood;
}

TEST_CASE("one a side: what a cover takes past the ends of its boards") {
  const Job job = one_a_side();
  const test::Stood stood = standing(job);
  const Pattern &front = stood.patterns[0], &left = stood.patterns[1];
  // By hand. A tongue over the noodles' end, 2 1/2; back along them, 2 1/2 (front) and 23/32
  // (sides); down the board's end, 23/32; on to its back, 2. Cloth in the middle of its thickness
  // goes three quarter turns outwards, 3 pi/4 of it, and cuts a corner, once its thickness.
  const double bends = job.cloth.thickness.mm() / kInch * (0.75 * kPi - 1);
  CHECK(front.ends[0].tongue / kInch == doctest::Approx(7.71875 + bends));
  CHECK(left.ends[1].tongue / kInch == doctest::Approx(5.9375 + bends));
  // Cloth: 34 1/16 and 31 1/16 of bumper, and two tongues.
  CHECK(front.cloth_length / kInch == doctest::Approx(34.0625 + 2 * (7.71875 + bends)));
  CHECK(left.cloth_length / kInch == doctest::Approx(31.0625 + 2 * (5.9375 + bends)));
  CHECK(front.ends[0].past_board / kInch == doctest::Approx(2.5));
  CHECK(left.ends[0].past_board / kInch == doctest::Approx(23.0 / 32));
  for (const EndOnPattern& end : front.ends) CHECK(end.ears / kInch == doctest::Approx(2.5));
}

TEST_CASE("flaps are slit where the board ends, and meet behind the padding") {
  const Job job = one_a_side();
  const test::Stood stood = standing(job);
  const Section& section = stood.wraps[0].section();
  const Pattern& front = stood.patterns[0];
  int slits = 0;
  for (const plane::Path& snip : front.snips) {
    const FlatPoint from = snip.vertices.front().at, to = snip.vertices.back().at;
    if (from.x != to.x) continue;
    ++slits;
    const double in = std::min(from.x, front.length - from.x);
    CHECK(in / kInch == doctest::Approx(2.5));
    // Half once round the noodles: 2 1/2 + pi 1 1/4, and half a turn of half the cloth.
    CHECK(std::abs(from.y) ==
          doctest::Approx((2.5 + 1.25 * kPi) * kInch + 0.5 * kPi * job.cloth.thickness.mm()));
    // cut_clear, 1/4 in, behind the padding: 23/32 - 1/4 = 15/32 from the board's back.
    CHECK(section.at(to.y).d / kInch == doctest::Approx(15.0 / 32));
  }
  CHECK(slits == 4);
  // Past the board the flap starts at the padding's back edge, where the ears begin.
  double ear = 0;
  for (const FlatPoint p : front.outline)
    if (p.x < -kInch && p.x > -3 * kInch) ear = std::max(ear, p.y);
  CHECK(ear == doctest::Approx(section.bare_back_edge()));
  CHECK(section.bare_half_girth() < section.cloth_edge_top());
}

TEST_CASE("staples, match marks and brackets keep to the board") {
  Job job = one_a_side();
  job.brackets.push_back({});
  BracketKeys& bracket = job.brackets.back();
  bracket.side = "front";
  bracket.at = FromCorner{inches(9), "right"};
  bracket.width = inches(2);
  bracket.height = inches(3);
  const test::Stood stood = standing(job);
  for (std::size_t k = 0; k < 4; ++k) {
    const Pattern& pattern = stood.patterns[k];
    const double bare = (k % 2 == 0 ? 2.5 : 23.0 / 32) * kInch;
    int tongues = 0;
    for (const Staple& staple : pattern.staples) {
      if (!staple.upright) {
        CHECK(staple.at.x >= bare + 0.5 * kInch - 1e-6);  // makers keep half an inch off an end
        CHECK(staple.at.x <= pattern.length - bare - 0.5 * kInch + 1e-6);
        continue;
      }
      ++tongues;
      // In the middle of the tongue's two inches on the board's back.
      const bool start = staple.at.x < 0;
      const double out = start ? -staple.at.x : staple.at.x - pattern.length;
      CHECK(pattern.ends[start ? 0 : 1].tongue - out == doctest::Approx(kInch));
    }
    CHECK(tongues > 0);
    for (const MatchMark& mark : pattern.marks)
      CHECK(mark.at.x - mark.from_left_mm == doctest::Approx(bare));
  }
  // 9 in from the frame's corner, past which the play of 1/16 in, a board of 23/32 in and 2 1/2 in
  // of padding reach, less 1/4 in at the end.
  REQUIRE(stood.patterns[0].brackets.size() == 1);
  CHECK(stood.patterns[0].brackets[0].s / kInch ==
        doctest::Approx(9 + 1.0 / 16 + 23.0 / 32 + 2.5 - 0.25));
}

TEST_CASE("a numeral goes past its board's end only where it lies on the padding") {
  const Job job = one_a_side();
  const test::Stood stood = standing(job);
  // By hand: the cloth lies on the noodles for half a flat of 2 1/2 and a quarter round.
  const double padding = 1.25 * kInch + 0.5 * kPi * (1.25 * kInch + 0.5 * job.cloth.thickness.mm());
  const Wrap &front = stood.wraps[0], &left = stood.wraps[1];
  for (const Wrap* wrap : {&front, &left}) {
    const auto clear = clear_stretches(*wrap, padding - 0.1);
    REQUIRE(clear.size() == 1);
    CHECK(clear[0].from_s == 0);
    CHECK(clear[0].to_s == wrap->run().length);
  }
  const auto on_front = clear_stretches(front, padding + 0.1);
  REQUIRE(on_front.size() == 1);
  CHECK(on_front[0].from_s / kInch == doctest::Approx(2.5));
  CHECK(on_front[0].to_s == doctest::Approx(front.run().length - 2.5 * kInch));
  const auto on_left = clear_stretches(left, padding + 0.1);
  REQUIRE(on_left.size() == 1);
  CHECK(on_left[0].from_s / kInch == doctest::Approx(23.0 / 32));
}

TEST_CASE("a flap that does not come round to the padding's back is refused") {
  Job job = one_a_side();
  // By hand, without the cloth's thickness: over 1 1/4 in of flat, a quarter round of 1.963 in,
  // half a noodle and a board of 3/8 in cloth has come 4.838 in to the board's back; a flap of 1/2
  // in ends at 5.338 in. The noodles' back begins after 1 1/4 in and half a round: 5.177 in.
  job.boards.thickness = inches(3.0 / 8);
  job.cloth.flap = inches(0.5);
  job.cloth.staple_line = inches(0.25);
  job.places.set("cloth.flap", {"job.toml", 12, 3});
  const auto wraps = test::wraps_of(job);
  const auto pattern = make_pattern(wraps[0], job);
  REQUIRE_FALSE(pattern.has_value());
  CHECK(pattern.error()[0].why == Why::DoesNotFit);
  CHECK(pattern.error()[0].place.line == 12);
  // What it says to give is enough, and a sixteenth less is not.
  const std::string& sentence = pattern.error()[0].sentence;
  const std::string before = "expected at least ";
  const auto least =
      parse_length(sentence.substr(sentence.find(before) + before.size()), Units::Inches);
  REQUIRE(least.has_value());
  job.cloth.flap = *least;
  CHECK(make_pattern(test::wraps_of(job)[0], job).has_value());
  job.cloth.flap = *least - inches(1.0 / 16);
  CHECK_FALSE(make_pattern(test::wraps_of(job)[0], job).has_value());
}

}  // namespace
}  // namespace swathe
