#include "stock/bin_packing.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <numeric>
#include <random>
#include <string>

namespace swathe {
namespace {

using Sizes = std::vector<std::int64_t>;

/// Every item once, no bin overfull.
bool sound(const BinPacking& packing, const Sizes& sizes, std::int64_t capacity) {
  std::vector<int> seen(sizes.size(), 0);
  for (const auto& bin : packing.bins) {
    std::int64_t sum = 0;
    for (const std::size_t item : bin) {
      sum += sizes[item];
      ++seen[item];
    }
    if (sum > capacity || bin.empty()) return false;
  }
  return std::ranges::all_of(seen, [](int n) { return n == 1; });
}

Sizes repeated(const Sizes& widths, const std::vector<int>& demand) {
  Sizes sizes;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    sizes.insert(sizes.end(), static_cast<std::size_t>(demand[i]), widths[i]);
  }
  return sizes;
}

/// The slow truth: whether items fit into bins with so much room, by trying every bin for each.
bool fit(const Sizes& sizes, std::size_t item, Sizes& room) {
  if (item == sizes.size()) return true;
  for (std::int64_t& left : room) {
    if (left < sizes[item]) continue;
    left -= sizes[item];
    if (fit(sizes, item + 1, room)) return true;
    left += sizes[item];
  }
  return false;
}

/// The slow truth: fewest bins by trying every bin for every item.
std::size_t fewest(const Sizes& sizes, std::size_t item, Sizes& room, std::int64_t capacity,
                   std::size_t best) {
  if (room.size() >= best) return best;
  if (item == sizes.size()) return room.size();
  for (std::size_t bin = 0; bin < room.size(); ++bin) {
    if (room[bin] < sizes[item]) continue;
    room[bin] -= sizes[item];
    best = std::min(best, fewest(sizes, item + 1, room, capacity, best));
    room[bin] += sizes[item];
  }
  room.push_back(capacity - sizes[item]);
  best = std::min(best, fewest(sizes, item + 1, room, capacity, best));
  room.pop_back();
  return best;
}

}  // namespace

// OR-Library, file binpack1 (J. E. Beasley; Falkenauer's uniform class u120): capacity 150, 120
// items, with the best known number of bins, each of them equal to a lower bound.
TEST_CASE("the twenty u120 cases of the OR-Library are packed as well as is known") {
  std::ifstream file(SWATHE_TEST_DATA "/stock/binpack1.txt");
  REQUIRE(file.good());
  int cases = 0;
  file >> cases;
  REQUIRE(cases == 20);
  for (int i = 0; i < cases; ++i) {
    std::string name;
    std::int64_t capacity = 0;
    std::size_t count = 0, best = 0;
    file >> name >> capacity >> count >> best;
    Sizes sizes(count);
    for (auto& size : sizes) file >> size;
    REQUIRE(file.good());
    CAPTURE(name);
    const BinPacking packing = pack_bins(sizes, capacity);
    CHECK(sound(packing, sizes, capacity));
    CHECK(packing.bins.size() == best);
    CHECK(packing.at_least == best);
  }
}

// V. Chvatal, Linear Programming (1983), chapter 13: raws of 100, finals of 45, 36, 31 and 14.
// The linear bound is 452.25.
TEST_CASE("Chvatal's cutting-stock example takes 453 raws") {
  const Sizes sizes = repeated({45, 36, 31, 14}, {97, 610, 395, 211});
  const BinPacking packing = pack_bins(sizes, 100);
  CHECK(sound(packing, sizes, 100));
  CHECK(packing.bins.size() == 453);
}

// The paper machine with rolls of 5600 mm, as in the encyclopedia article "Cutting stock problem":
// the least is 73 rolls.
TEST_CASE("the paper machine takes 73 rolls") {
  const Sizes sizes =
      repeated({1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200},
               {22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20});
  const BinPacking packing = pack_bins(sizes, 5600);
  CHECK(sound(packing, sizes, 5600));
  CHECK(packing.bins.size() == 73);
}

TEST_CASE("BinPacking (3): a few items lie in the fewest bins there are") {
  std::mt19937 dice(20486);
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    const std::int64_t capacity = 100;
    Sizes sizes(3 + dice() % 8);
    for (auto& size : sizes) size = 10 + static_cast<std::int64_t>(dice() % 60);
    Sizes room;
    const std::size_t truth = fewest(sizes, 0, room, capacity, sizes.size() + 1);
    const BinPacking packing = pack_bins(sizes, capacity);
    CHECK(sound(packing, sizes, capacity));
    CHECK(packing.bins.size() == truth);
    CHECK(packing.at_least == truth);
    CHECK(bins_at_least(sizes, capacity) <= truth);
  }
}

TEST_CASE("items are packed into bins of two sizes where they fit, and only there") {
  std::mt19937 dice(20486);
  int fitting = 0;
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    Sizes sizes(3 + dice() % 6);
    for (auto& size : sizes) size = 10 + static_cast<std::int64_t>(dice() % 50);
    const std::vector<Bins> bins = {{100, dice() % 3}, {60, dice() % 4}};
    if (bins[0].count + bins[1].count == 0) continue;
    Sizes room(bins[0].count, 100);
    room.resize(bins[0].count + bins[1].count, 60);
    Sizes left = room;
    const auto packed = pack_into(sizes, bins);
    REQUIRE(packed.has_value() == fit(sizes, 0, left));
    if (!packed) continue;
    ++fitting;
    REQUIRE(packed->size() == room.size());
    std::vector<int> seen(sizes.size(), 0);
    for (std::size_t bin = 0; bin < room.size(); ++bin)
      for (const std::size_t item : (*packed)[bin]) {
        room[bin] -= sizes[item];
        ++seen[item];
      }
    CHECK(std::ranges::all_of(room, [](std::int64_t r) { return r >= 0; }));
    CHECK(std::ranges::all_of(seen, [](int n) { return n == 1; }));
  }
  CHECK(fitting > 30);
  CHECK(fitting < 270);
}

TEST_CASE("nothing needs no bin") {
  CHECK(pack_bins({}, 10).bins.empty());
  CHECK(bins_at_least({}, 10) == 0);
}

}  // namespace swathe
