#include "draw/shelves.hpp"

#include <doctest/doctest.h>

#include "support/drawn.hpp"

namespace swathe {
namespace {

TEST_CASE("shelve: drawn pieces keep apart and inside their page's room, none is lost") {
  test::for_drawn_cases("shelves", 200, [](std::mt19937_64& rng) {
    const plane::Box first{{10, 10}, {200, test::drawn(rng, 20, 200)}}, later{{10, 10}, {200, 250}};
    constexpr double kGap = 4.0;
    std::vector<FlatPoint> sizes;
    const int count = static_cast<int>(rng() % 12);
    for (int k = 0; k < count; ++k)
      sizes.push_back({test::drawn(rng, 5, 190), test::drawn(rng, 5, 240)});
    const std::vector<Shelved> places = shelve(sizes, first, later, kGap);
    REQUIRE(places.size() == sizes.size());
    for (std::size_t a = 0; a < places.size(); ++a) {
      const plane::Box box{places[a].at, places[a].at + sizes[a]};
      CHECK((places[a].page == 0 ? first : later).grown(1e-6).holds(box));
      for (std::size_t b = a + 1; b < places.size(); ++b) {
        if (places[a].page != places[b].page) continue;
        const plane::Box other{places[b].at, places[b].at + sizes[b]};
        CHECK_FALSE(box.grown(kGap - 1e-6).meets(other));
      }
    }
  });
}

}  // namespace
}  // namespace swathe
