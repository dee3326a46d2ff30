#include "tile/tile_grid.hpp"

#include <doctest/doctest.h>

#include <set>

#include "support/drawn.hpp"

namespace swathe {
namespace {

/// Which tiles there are, a string a row.
TileGrid grid_of(const std::vector<std::string>& rows) {
  TileGrid grid{{0, 0}, 10, 10, 2, rows.front().size(), rows.size(), {}};
  for (const std::string& row : rows)
    for (const char c : row) grid.used.push_back(c == '#');
  return grid;
}

TEST_CASE("glue_order: worked by hand for a cover with a tongue") {
  const TileGrid grid = grid_of({".##.",  //
                                 "####",  //
                                 ".#.."});
  // By column letter and row: B1, C1. A2 joins nothing yet; B2 would lie on A2 too, but joins B1,
  // so it comes. A2 goes under it, and the rest has its left and upper neighbors.
  CHECK(glue_order(grid) == std::vector<std::size_t>{0, 1, 2, 0,  //
                                                     4, 3, 5, 6,  //
                                                     0, 7, 0, 0});
  CHECK(tile_name(grid, 2, 0) == "2");  // what is printed is the order
  CHECK(tile_name(grid, 0, 1) == "4");
}

TEST_CASE("glue_order (1) (2): every next tile joins one that lies, on its left and upper first") {
  test::for_drawn_cases("glue", 300, [](std::mt19937_64& rng) {
    std::vector<std::string> rows(1 + rng() % 5, std::string(1 + rng() % 7, '.'));
    for (std::string& row : rows)
      for (char& c : row) c = rng() % 4 ? '#' : '.';
    const TileGrid grid = grid_of(rows);
    const std::vector<std::size_t> order = glue_order(grid);
    const auto number = [&](std::size_t c, std::size_t r) {
      return grid.has(c, r) ? order[r * grid.columns + c] : 0;
    };
    std::set<std::size_t> numbers;
    for (std::size_t r = 0; r < grid.rows; ++r)
      for (std::size_t c = 0; c < grid.columns; ++c) {
        CHECK((order[r * grid.columns + c] > 0) == grid.has(c, r));
        if (grid.has(c, r)) numbers.insert(number(c, r));
      }
    CHECK(numbers.size() == grid.count());
    if (!numbers.empty()) CHECK(*numbers.rbegin() == grid.count());

    for (std::size_t n = 1; n <= grid.count(); ++n) {
      // What lies before the n-th, and what could have come instead of it.
      const auto lies = [&](std::size_t c, std::size_t r) {
        return number(c, r) > 0 && number(c, r) < n;
      };
      bool joins_any = false, lays_any = false, own_joins = false, own_lays = false;
      for (std::size_t r = 0; r < grid.rows; ++r)
        for (std::size_t c = 0; c < grid.columns; ++c) {
          if (!grid.has(c, r) || lies(c, r)) continue;
          const bool joins = (c > 0 && lies(c - 1, r)) || (r > 0 && lies(c, r - 1)) ||
                             lies(c + 1, r) || lies(c, r + 1);
          const bool lays = joins && (c == 0 || !grid.has(c - 1, r) || lies(c - 1, r)) &&
                            (r == 0 || !grid.has(c, r - 1) || lies(c, r - 1));
          joins_any |= joins;
          lays_any |= lays;
          if (number(c, r) != n) continue;
          own_joins = joins;
          own_lays = lays;
        }
      CHECK(own_joins == joins_any);
      CHECK(own_lays == lays_any);
    }
  });
}

}  // namespace
}  // namespace swathe
