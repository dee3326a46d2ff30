#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "support/sight.hpp"
#include "swathe/sight.hpp"

namespace swathe {
namespace {

using test::blind_box;
using test::worked_scene;

TEST_CASE("sweep (1): each ring's arcs go once round, neighbors differ") {
  const Sight sight = sweep(worked_scene({"front", "left", "back"}), SightKeys{});
  REQUIRE(sight.rings.size() == 6);
  for (const SightRing& ring : sight.rings) {
    double sum = 0;
    for (std::size_t k = 0; k < ring.arcs.size(); ++k) {
      sum += ring.arcs[k].to_deg - ring.arcs[k].from_deg;
      if (k > 0) CHECK(ring.arcs[k].from_deg == doctest::Approx(ring.arcs[k - 1].to_deg));
    }
    CHECK(sum == doctest::Approx(360));
    CHECK(ring.fraction(Reads::Number) + ring.fraction(Reads::Another) +
              ring.fraction(Reads::Nothing) ==
          doctest::Approx(1));
  }
}

TEST_CASE("sweep (2): within an arc every viewpoint reads the same") {
  const SightKeys keys;
  const Sight sight =
      sweep(worked_scene({"front", "left"}, {blind_box(-600, 420, 0, -580, 700, 400)}), keys);
  bool misled = false;
  for (const SightRing& ring : sight.rings) {
    const Sightlines lines(sight.scene, ring.eye_height, sight.criterion);
    for (const SightArc& arc : ring.arcs) {
      misled = misled || arc.reads == Reads::Another;
      for (const double share : {1e-6, 0.3, 0.7, 1 - 1e-6}) {
        const double bearing = arc.from_deg + share * (arc.to_deg - arc.from_deg);
        const FlatPoint eye =
            sight.scene.center + ring.distance.mm() * towards(degrees(bearing).radians());
        Reads reads = Reads::Nothing;
        for (const NumberSeen& seen : lines.seen_from(eye)) {
          if (seen.whole()) reads = Reads::Number;
          if (reads == Reads::Nothing && seen.misleading()) reads = Reads::Another;
        }
        CHECK(arc.reads == reads);
      }
    }
  }
  CHECK(misled);  // the box covers the first digits of the left side alone
}

TEST_CASE("sweep: a square machine numbered on four sides reads from everywhere nearby") {
  SightKeys keys;
  keys.distance = {inches(240)};
  const Sight sight = sweep(worked_scene({"front", "left", "back", "right"}), keys);
  for (const SightRing& ring : sight.rings)
    CHECK(ring.fraction(Reads::Number) == doctest::Approx(1));
  // Three of four, 65 deg either side of each: 310 deg from very far away, if size were no matter.
  keys.distance = {mm(90000)};
  keys.least_angle = Angle::from_arcmin(1);
  const Sight far = sweep(worked_scene({"front", "left", "back"}), keys);
  CHECK(far.rings[0].fraction(Reads::Number) * 360 == doctest::Approx(310).epsilon(0.005));
}

// 4 in is good to 76.4 ft at 15 arc minutes: the same for the height that is seen, out from the
// bumper's face.
TEST_CASE("sweep: the farthest distance is the size over the angle") {
  SightKeys keys;
  keys.eye_height = {inches(4.5)};  // level with the digits' middle
  const sight::Scene scene = worked_scene({"left"});
  const double seen_height = scene.numbers[0].digits[2].seen_height;
  const Sight sight = sweep(scene, keys);
  const double out = 3.25 * 25.4 + 355.6;  // of the face from the center
  CHECK(sight.rings[0].numbers[0].farthest.mm() ==
        doctest::Approx(out + 3437.747 / 15 * seen_height).epsilon(1e-3));
  CHECK(sight.rings[0].numbers[0].farthest.inches() / 12 ==
        doctest::Approx(76.4 * seen_height / 101.6 + out / 304.8).epsilon(1e-3));
}

TEST_CASE("sweep: hidden from all round, a number reads nowhere") {
  // A ring of walls, higher than any eye.
  const Sight sight =
      sweep(worked_scene({"left"}, {blind_box(-700, -2000, 0, -600, 3000, 4000)}), SightKeys{});
  for (const SightRing& ring : sight.rings) {
    CHECK(ring.fraction(Reads::Nothing) > 0.99);
  }
}

TEST_CASE("sweep (3): a machine turned turns its arcs") {
  test::for_drawn_cases("sweep-3", 10, [](std::mt19937_64& rng) {
    Job job = test::worked_job();
    const double turn = test::drawn(rng, 0, 2 * std::numbers::pi);
    const std::vector<Wrap> wraps = test::wraps_of(job);
    Job turned = job;
    for (FlatPoint& corner : turned.frame.corners) {
      // About the center, so that observers walk the same circle.
      const FlatPoint from = corner - FlatPoint{355.6, 381};
      corner = {355.6 + std::cos(turn) * from.x - std::sin(turn) * from.y,
                381 + std::sin(turn) * from.x + std::cos(turn) * from.y};
    }
    const std::vector<Wrap> after = test::wraps_of(turned);
    const std::vector<std::string> sides = {"front", "left", "right"};
    const sight::Scene scene = make_scene(wraps, test::numbers_on(wraps, sides), {});
    sight::Scene scene_turned = make_scene(after, test::numbers_on(after, sides), {});
    const Sightlines lines(scene, mm(1400)), lines_turned(scene_turned, mm(1400));
    for (std::size_t n = 0; n < 3; ++n)
      for (std::size_t d = 0; d < 5; ++d) {
        const auto a = lines.around(n, d, mm(9000)).legible;
        const auto b = lines_turned.around(n, d, mm(9000)).legible;
        CHECK(a.measure() == doctest::Approx(b.measure()).epsilon(1e-9));
        for (int k = 0; k < 20; ++k) {
          const double at = test::drawn(rng, 0, 6.28);
          bool near = false;
          for (const double flip : a.flips()) near = near || std::abs(flip - at) < 1e-6;
          if (!near) CHECK(a.contains(at) == b.contains(at + turn));
        }
      }
  });
}

TEST_CASE("sweep (4): a blind box more never adds to what reads") {
  test::for_drawn_cases("sweep-4", 15, [](std::mt19937_64& rng) {
    std::vector<BlindKeys> blind;
    double last = 1;
    for (int k = 0; k < 4; ++k) {
      const Sight sight =
          sweep(worked_scene({"front", "left", "back", "right"}, blind), SightKeys{});
      double reads = 0;
      for (const SightRing& ring : sight.rings)
        reads += ring.fraction(Reads::Number) / static_cast<double>(sight.rings.size());
      CHECK(reads <= last + 1e-12);
      last = reads;
      const double x = test::drawn(rng, -900, 1400), y = test::drawn(rng, -900, 1400);
      blind.push_back(blind_box(x, y, 0, x + 300, y + 300, test::drawn(rng, 300, 1500)));
    }
  });
}

TEST_CASE("bearings in words") {
  CHECK(arc_words(301.2, 420.9) == "301 to 61");
  CHECK(arc_words(0, 360) == "all round");
  const std::vector<SightArc> arcs = {{10, 20, Reads::Another, "20", 0},
                                      {20, 20.1, Reads::Another, "2", 0},
                                      {20.1, 40, Reads::Number, "20486", 0},
                                      {40, 350, Reads::Nothing, "", -1},
                                      {350, 370, Reads::Another, "86", 0}};
  CHECK(arcs_in_words(arcs, Reads::Another, degrees(1)) == "350 to 20 (86, 20, 2)");
  CHECK(arcs_in_words(arcs, Reads::Nothing, degrees(1)) == "40 to 350");
  CHECK(arcs_in_words({arcs[1]}, Reads::Another, degrees(1)) == "nowhere");
  CHECK(arcs_in_words({arcs[1]}, Reads::Another, degrees(0.05)) == "20 to 20 (2)");
}

}  // namespace
}  // namespace swathe
