#include "draw/shelves.hpp"

#include <doctest/doctest.h>

#include <algorithm>

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

TEST_CASE("shelve on fewer pages: a last piece alone goes where there is room, the others stay") {
  const plane::Box room{{10, 10}, {200, 250}};
  // The third finds room beside the first.
  const std::vector<FlatPoint> sizes = {{100, 200}, {150, 200}, {60, 60}};
  CHECK(shelve(sizes, room, room, 4).back().page == 2);
  const std::vector<Shelved> places = shelve_on_fewer(sizes, room, room, 4);
  REQUIRE(places.size() == 3);
  CHECK(places[0].page == 0);
  CHECK(places[1].page == 1);
  CHECK(places[2].page == 0);
  CHECK(places[2].at == FlatPoint{114, 190});

  test::for_drawn_cases("shelves-fewer", 200, [&](std::mt19937_64& rng) {
    std::vector<FlatPoint> drawn;
    const int count = static_cast<int>(rng() % 8);
    for (int k = 0; k < count; ++k)
      drawn.push_back({test::drawn(rng, 5, 190), test::drawn(rng, 5, 240)});
    const std::vector<Shelved> before = shelve(drawn, room, room, 4),
                               after = shelve_on_fewer(drawn, room, room, 4);
    REQUIRE(after.size() == drawn.size());
    const auto last = [](const std::vector<Shelved>& all) {
      std::size_t page = 0;
      for (const Shelved& place : all) page = std::max(page, place.page);
      return page;
    };
    CHECK(last(after) <= last(before));
    for (std::size_t a = 0; a < after.size(); ++a) {
      const plane::Box box{after[a].at, after[a].at + drawn[a]};
      CHECK(room.grown(1e-6).holds(box));
      for (std::size_t b = a + 1; b < after.size(); ++b)
        if (after[a].page == after[b].page)
          CHECK_FALSE(box.grown(4 - 1e-6).meets(plane::Box{after[b].at, after[b].at + drawn[b]}));
    }
  });
}

}  // namespace
}  // namespace swathe
