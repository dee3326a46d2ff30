#include "sight/camera.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "support/drawn.hpp"

// The pinhole: an image's size is to the focal length as the thing's is to its distance; Hartley
// and Zisserman, Multiple View Geometry in Computer Vision (2nd edition), section 6.1: x = f X / Z.
namespace swathe {
namespace {

SpacePoint drawn_point(std::mt19937_64& rng, double reach) {
  return {test::drawn(rng, -reach, reach), test::drawn(rng, -reach, reach),
          test::drawn(rng, -reach, reach)};
}

TEST_CASE("camera (1): the middle, left and right, up and down") {
  const Camera camera({0, -6000, 1500}, {0, 0, 100}, 50);
  CHECK(std::abs(camera.at({0, 0, 100}).x) < 1e-12);
  CHECK(std::abs(camera.at({0, 0, 100}).y) < 1e-12);
  CHECK(camera.at({300, 0, 100}).x > 0);  // looking along y, x is on the right
  CHECK(camera.at({0, 0, 300}).y > 0);
  CHECK(camera.depth_of({0, 0, 100}) == doctest::Approx(std::hypot(6000, 1400)));
}

// Worked by hand: level, 2000 mm away, 50 mm focal length: 120 mm aside is 3 mm, 80 mm up is 2 mm.
TEST_CASE("camera: known points") {
  const Camera camera({0, -2000, 100}, {0, 0, 100}, 50);
  CHECK(camera.at({120, 0, 180}).x == doctest::Approx(3));
  CHECK(camera.at({120, 0, 180}).y == doctest::Approx(2));
  CHECK(camera.at({120, 2000, 180}).x == doctest::Approx(1.5));  // twice as far, half as large
}

TEST_CASE("camera (2): a 100 mm bar at distance d is f x 100 / d") {
  test::for_drawn_cases("camera-2", 200, [](std::mt19937_64& rng) {
    const SpacePoint at = drawn_point(rng, 500);
    const double turn = test::drawn(rng, 0, 6.28), d = test::drawn(rng, 500, 30000);
    const double pitch = test::drawn(rng, -1, 1), f = test::drawn(rng, 1, 200);
    const SpacePoint eye{at.x - d * std::cos(pitch) * std::cos(turn),
                         at.y - d * std::cos(pitch) * std::sin(turn), at.z + d * std::sin(pitch)};
    const Camera camera(eye, at, f);
    // A level bar across the line of sight.
    const SpacePoint one{at.x + 50 * std::sin(turn), at.y - 50 * std::cos(turn), at.z};
    const SpacePoint two{at.x - 50 * std::sin(turn), at.y + 50 * std::cos(turn), at.z};
    CHECK(apart(camera.at(one), camera.at(two)) == doctest::Approx(f * 100 / d));
  });
}

TEST_CASE("camera (3): straight stays straight") {
  test::for_drawn_cases("camera-3", 200, [](std::mt19937_64& rng) {
    const Camera camera({4000, 3000, 1600}, drawn_point(rng, 200), 50);
    const SpacePoint a = drawn_point(rng, 800), b = drawn_point(rng, 800);
    const FlatPoint from = camera.at(a), to = camera.at(b);
    for (const double share : {0.2, 0.5, 0.9}) {
      const FlatPoint p = camera.at(
          {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y), a.z + share * (b.z - a.z)});
      CHECK(std::abs(cross(unit(to - from), p - from)) < 1e-9);
    }
  });
}

}  // namespace
}  // namespace swathe
