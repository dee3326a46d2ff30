#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "support/examples.hpp"
#include "support/made.hpp"
#include "swathe/screen.hpp"

// Who can read it, from one place: against the circles that were worked out for the whole job.
namespace swathe {
namespace {

/// A box beside the left front corner, so that some of the number is hidden from some places.
const char* const kBlind = R"(
[[sight.blind]]
box = [["-20 in", "10 in", "2 in"], ["-10 in", "18 in", "12 in"]]
)";

TEST_CASE("verdict (1): the same as on the job's circles, in the middle of each of their arcs") {
  bool another = false, nothing = false;
  for (const char* name : {"tin-heron", "kinds/opening", "kinds/hexagon", "kinds/corner-pieces"})
    for (const char* more : {"", kBlind}) {
      CAPTURE(name);
      const Made made = test::made(test::bytes_of(test::example(name)) + more);
      for (const SightRing& ring : made.sight->rings)
        for (const SightArc& arc : ring.arcs) {
          if (arc.to_deg - arc.from_deg < 1e-3) continue;
          const Angle bearing = degrees(0.5 * (arc.from_deg + arc.to_deg));
          const PlaceVerdict verdict =
              verdict_from(made, {bearing, ring.distance, ring.eye_height, 0});
          CHECK(verdict.reads == arc.reads);
          if (arc.reads != Reads::Nothing) CHECK(verdict.text == arc.text);
          CHECK(verdict.out_to.has_value() == (arc.reads == Reads::Number));
          CHECK(verdict.shows.empty() == (arc.reads == Reads::Nothing));
          another = another || arc.reads == Reads::Another;
          nothing = nothing || arc.reads == Reads::Nothing;
        }
    }
  CHECK(another);
  CHECK(nothing);
}

TEST_CASE("verdict (2): it can be read as far out as it says, and no farther") {
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  for (int k = 0; k < 24; ++k) {
    const Observer here{degrees(15.0 * k), inches(240), inches(48), 0};
    const PlaceVerdict verdict = verdict_from(made, here);
    REQUIRE(verdict.out_to);
    Observer there = here;
    there.distance = 0.999 * *verdict.out_to;
    CHECK(verdict_from(made, there).reads == Reads::Number);
    there.distance = 1.001 * *verdict.out_to;
    CHECK(verdict_from(made, there).reads != Reads::Number);
  }
}

TEST_CASE("verdict: square on, digits are good to the distance of their height at 15 arc minutes") {
  // Source: h = 2 d tan(x / 2), Federal Aviation Administration, Human Factors Design Standard.
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  double seen = 1e300;
  for (const DigitInSpace& digit : made.sight->scene.numbers.front().digits)
    seen = std::min(seen, digit.seen_height);
  const double out = seen / (2 * std::tan(15.0 / 60 / 2 * 3.14159265358979 / 180));
  const PlaceVerdict front = side_verdicts(made).front();
  REQUIRE(front.out_to);
  // From the machine's middle; seen somewhat from above and from beside the number.
  CHECK(front.out_to->mm() == doctest::Approx(out + 15 * 25.4).epsilon(0.01));
}

TEST_CASE("verdict: the four ways in words") {
  std::string text = test::bytes_of(test::example("tin-heron"));
  const std::string all = "sides = [\"front\", \"left\", \"back\", \"right\"]";
  REQUIRE(text.find(all) != std::string::npos);
  text.replace(text.find(all), all.size(), "sides = [\"front\", \"left\", \"right\"]");
  const std::vector<PlaceVerdict> ways = side_verdicts(test::made(text));
  REQUIRE(ways.size() == 4);
  CHECK(ways[0].way == "front");
  CHECK(ways[0].words == "read from here, out to 74 ft");
  CHECK(ways[1].way == "left");
  CHECK(ways[1].reads == Reads::Number);
  CHECK(ways[1].shows == Subjects(Subject::numeral(2)));
  CHECK(ways[2].way == "back");
  CHECK(ways[2].reads == Reads::Nothing);
  CHECK(ways[2].words == "no number on this side: nobody behind can read it");
  CHECK(ways[3].way == "right");
  CHECK(ways[3].from.bearing.degrees() == doctest::Approx(270));
}

TEST_CASE("verdict: why it cannot be read") {
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  const PlaceVerdict far = verdict_from(made, {degrees(0), inches(12 * 100), inches(48), 0});
  CHECK(far.words.starts_with("too far away to read: come within 7"));
  const PlaceVerdict near = verdict_from(made, {degrees(0), inches(48), inches(63), 0});
  // By hand: digits of 98.4 to 102 mm go 0.54 to 0.6 rad round noodles of 1 1/4 in, and an eye 63
  // in up comes in front of their lower ends at 4.5 to 5 ft from the middle of a frame 30 in deep.
  CHECK(near.words == "too close to read: step back to 4.9 ft");
  CHECK(verdict_from(made, {degrees(0), inches(12 * 4.9), inches(63), 0}).reads == Reads::Number);
  CHECK(verdict_from(made, {degrees(0), inches(12 * 4.8), inches(63), 0}).reads != Reads::Number);
  const std::string text = test::bytes_of(test::example("tin-heron"));
  const Made behind = test::made(text + R"(
[[sight.blind]]
box = [["-8 in", "34 in", "0 in"], ["36 in", "36 in", "60 in"]]
)");
  CHECK(verdict_from(behind, {degrees(0), inches(240), inches(48), 0}).words ==
        "cannot be read from here: something stands in front of it");
}

TEST_CASE("verdict: an observer is kept off the machine and within the limits") {
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const Observer inside = kept(made, {Angle::from_radians(nan), mm(nan), mm(-5), 77});
  CHECK(inside.bearing.radians() == 0);
  CHECK(inside.eye_height.mm() == 0);
  CHECK(inside.color == 0);
  // The bumpers' corners are furthest out: half of 28 and 30 in and the depth of 3 7/32 in, with
  // cloth.
  CHECK(inside.distance.mm() > std::hypot(14 + 3.22, 15 + 3.22) * 25.4);
  CHECK(kept(made, {degrees(0), mm(1e9), mm(1e9), 1}).distance == kFarthestEye);
  CHECK(kept(made, {degrees(0), mm(1e9), mm(1e9), 1}).eye_height == kHighestEye);
  const Observer fine{degrees(123), inches(300), inches(50), 1};
  CHECK(kept(made, fine).distance == fine.distance);
  CHECK(kept(made, fine).color == 1);
  CHECK(first_observer(made, degrees(90)).distance == inches(240));
  CHECK(first_observer(made, degrees(90)).eye_height == inches(63));
}

}  // namespace
}  // namespace swathe
