#include <algorithm>
#include <cmath>
#include <functional>

#include "stock/bin_packing.hpp"
#include "swathe/stock/stock.hpp"

namespace swathe {
namespace {

constexpr double kGrid = 1e-6;   // mm
constexpr double kSlack = 1e-3;  // mm a stick may be short by: rounding, not wood

std::int64_t on_grid(double mm) { return std::llround(mm / kGrid); }

double used(const std::vector<StockStick>& sticks) {
  double cut = 0, bought = 0;
  for (const StockStick& stick : sticks) {
    bought += stick.length;
    for (const StockCut& piece : stick.cuts) cut += piece.length;
  }
  return bought > 0 ? cut / bought : 0.0;
}

/// Sticks that are cut alike stand together, those with the longest pieces first.
void put_in_order(std::vector<StockStick>& sticks) {
  const auto lengths = [](const StockStick& stick) {
    std::vector<std::int64_t> list;
    for (const StockCut& piece : stick.cuts) list.push_back(on_grid(piece.length));
    return list;
  };
  std::ranges::stable_sort(sticks, std::ranges::greater(), lengths);
}

}  // namespace

StockPlan cut_sticks(const std::vector<StockCut>& pieces, double stick_length, double kerf) {
  StockPlan plan;
  std::vector<StockCut> fitting;
  for (const StockCut& piece : pieces) {
    (piece.length <= stick_length + kSlack ? fitting : plan.too_long).push_back(piece);
  }
  // n pieces take n - 1 cuts between them: give each piece a kerf of its own, and the stick one.
  const std::int64_t capacity = on_grid(stick_length + kerf + kSlack);
  std::vector<std::int64_t> sizes;
  for (const StockCut& piece : fitting) {
    sizes.push_back(std::max<std::int64_t>(1, on_grid(piece.length + kerf)));
  }
  for (const auto& bin : pack_bins(sizes, capacity).bins) {
    StockStick& stick = plan.sticks.emplace_back();
    stick.length = stick_length;
    for (const std::size_t item : bin) stick.cuts.push_back(fitting[item]);
  }
  put_in_order(plan.sticks);
  plan.used_fraction = used(plan.sticks);
  return plan;
}

}  // namespace swathe
