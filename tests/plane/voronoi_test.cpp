#include "plane/voronoi.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <boost/polygon/voronoi_diagram.hpp>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <vector>

#include "support/drawn.hpp"

using namespace swathe;

namespace {

using Diagram = boost::polygon::voronoi_diagram<double>;

struct PlacedCorner {
  std::int32_t x, y;
};

/// A wavy ring of chords about a drawn center, as outlines of digits are: corners turn by little.
std::vector<PlacedCorner> wavy_ring(std::mt19937_64& rng) {
  const double size = std::pow(10, test::drawn(rng, 3, 8.5));
  const double x = test::drawn(rng, -2, 2) * size, y = test::drawn(rng, -2, 2) * size;
  const double wave = test::drawn(rng, 0, 0.4), squeeze = test::drawn(rng, 0.2, 1);
  const double waves = std::round(test::drawn(rng, 1, 6));
  const int count = static_cast<int>(test::drawn(rng, 4, 150));
  std::vector<PlacedCorner> ring;
  for (int i = 0; i < count; ++i) {
    const double turn = 2 * std::numbers::pi * i / count;
    const double from_center = size * (1 + wave * std::sin(waves * turn)) / 2;
    ring.push_back(
        {static_cast<std::int32_t>(std::lround(x + from_center * std::cos(turn))),
         static_cast<std::int32_t>(std::lround(y + squeeze * from_center * std::sin(turn)))});
  }
  return ring;
}

template <typename Builder>
void build(const std::vector<PlacedCorner>& ring, Diagram& diagram) {
  Builder builder;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const PlacedCorner a = ring[i], b = ring[(i + 1) % ring.size()];
    builder.insert_segment(a.x, a.y, b.x, b.y);
  }
  builder.construct(&diagram);
}

/// Whether each vertex of one has its own in the other. In a ring that is its own mirror image two
/// may be reached at once: then either may come first.
bool all_near(const Diagram& one, const Diagram& other) {
  constexpr double kNear = 80 * 0x1p-52;
  std::vector<bool> used(other.num_vertices());
  for (const auto& a : one.vertices()) {
    std::size_t k = 0;
    for (; k < used.size(); ++k) {
      const auto& b = other.vertices()[k];
      if (!used[k] && std::abs(a.x() - b.x()) <= kNear * std::abs(b.x()) &&
          std::abs(a.y() - b.y()) <= kNear * std::abs(b.y()))
        break;
    }
    if (k == used.size()) return false;
    used[k] = true;
  }
  return true;
}

/// Which sources each edge parts, sorted.
std::vector<std::array<std::size_t, 4>> partings(const Diagram& diagram) {
  std::vector<std::array<std::size_t, 4>> all;
  for (const auto& edge : diagram.edges()) {
    const auto &here = *edge.cell(), &there = *edge.twin()->cell();
    all.push_back({here.source_index(), static_cast<std::size_t>(here.source_category()),
                   there.source_index(), static_cast<std::size_t>(there.source_category())});
  }
  std::ranges::sort(all);
  return all;
}

}  // namespace

// Held against Boost.Polygon's own circles, which are exact where doubles do not suffice: it
// promises 64 units in the last place, at most 2^-46; ours 2^-48.
TEST_CASE("drawn rings have the diagram that Boost's own predicates give") {
  using Own = boost::polygon::voronoi_builder<std::int32_t>;
  test::for_drawn_cases("wavy rings", 300, [](std::mt19937_64& rng) {
    const std::vector<PlacedCorner> ring = wavy_ring(rng);
    Diagram ours, theirs;
    build<plane::VoronoiBuilder>(ring, ours);
    build<Own>(ring, theirs);
    REQUIRE(ours.num_vertices() == theirs.num_vertices());
    REQUIRE(ours.num_edges() == theirs.num_edges());
    CHECK(all_near(ours, theirs));
    CHECK(partings(ours) == partings(theirs));
  });
}
