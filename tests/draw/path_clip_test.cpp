#include "draw/path_clip.hpp"

#include <doctest/doctest.h>

#include "support/drawn.hpp"

namespace swathe {
namespace {

TEST_CASE("path clip (1): nine boxes share a path out and nothing is lost") {
  test::for_drawn_cases("path-clip", 200, [](std::mt19937_64& rng) {
    plane::Path path;
    const int count = 2 + static_cast<int>(rng() % 7);
    for (int k = 0; k < count; ++k)
      path.vertices.push_back({{test::drawn(rng, -50, 150), test::drawn(rng, -50, 150)},
                               rng() % 3 == 0 ? test::drawn(rng, -1, 1) : 0.0});
    path.closed = rng() % 2 == 0;
    const double cuts[] = {-1000, 0, 100, 1000};
    double sum = 0;
    for (int i = 0; i < 3; ++i)
      for (int k = 0; k < 3; ++k)
        for (const plane::Path& part :
             clipped(path, {{cuts[i], cuts[k]}, {cuts[i + 1], cuts[k + 1]}}, 1e-5)) {
          sum += length(part);
          CHECK(plane::Box{{cuts[i], cuts[k]}, {cuts[i + 1], cuts[k + 1]}}.grown(1e-3).holds(
              bounds(part)));
        }
    CHECK(sum == doctest::Approx(length(path)).epsilon(1e-5));
  });
}

TEST_CASE("path clip: a path inside stays as it is, a closed one that leaves comes in one part") {
  const plane::Path ring = plane::circle({0, 0}, 10);
  CHECK(clipped(ring, {{-20, -20}, {20, 20}}).front().closed);
  CHECK(clipped(ring, {{0, -20}, {20, 20}}).size() == 1);  // starts inside, at (10, 0)
  CHECK(clipped(ring, {{-20, -20}, {0, 20}}).size() == 1);
  CHECK(clipped(ring, {{30, 30}, {40, 40}}).empty());
}

}  // namespace
}  // namespace swathe
