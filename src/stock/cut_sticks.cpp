#include <algorithm>
#include <cmath>
#include <functional>

#include "stock/bin_packing.hpp"
#include "stock/sticks.hpp"

namespace swathe {
namespace {

constexpr double kGrid = 1e-6;   // mm
constexpr double kSlack = 1e-3;  // mm a stick may be short by: rounding, not wood

std::int64_t on_grid(double mm) { return std::llround(mm / kGrid); }

}  // namespace

std::int64_t stick_capacity(double stick_length, double kerf) {
  return on_grid(stick_length + kerf + kSlack);
}

std::int64_t stick_share(const StockCut& piece, double kerf) {
  return std::max<std::int64_t>(1, on_grid(piece.length + kerf));
}

bool fits_stick(const StockCut& piece, double stick_length) {
  return piece.length <= stick_length + kSlack;
}

std::vector<StockStick> sticks_of(const std::vector<std::vector<std::size_t>>& bins,
                                  const std::vector<StockCut>& pieces, double stick_length) {
  std::vector<StockStick> sticks;
  for (const auto& bin : bins) {
    if (bin.empty()) continue;
    StockStick& stick = sticks.emplace_back();
    stick.length = stick_length;
    for (const std::size_t item : bin) stick.cuts.push_back(pieces[item]);
  }
  const auto lengths = [](const StockStick& stick) {
    std::vector<std::int64_t> list;
    for (const StockCut& piece : stick.cuts) list.push_back(on_grid(piece.length));
    return list;
  };
  std::ranges::stable_sort(sticks, std::ranges::greater(), lengths);
  return sticks;
}

double used_of(const std::vector<StockStick>& sticks) {
  double cut = 0, bought = 0;
  for (const StockStick& stick : sticks) {
    bought += stick.length;
    for (const StockCut& piece : stick.cuts) cut += piece.length;
  }
  return bought > 0 ? cut / bought : 0.0;
}

StockPlan cut_sticks(const std::vector<StockCut>& pieces, double stick_length, double kerf) {
  StockPlan plan;
  std::vector<StockCut> fitting;
  std::vector<std::int64_t> sizes;
  for (const StockCut& piece : pieces) {
    if (!fits_stick(piece, stick_length)) {
      plan.too_long.push_back(piece);
      continue;
    }
    fitting.push_back(piece);
    sizes.push_back(stick_share(piece, kerf));
  }
  const BinPacking packing = pack_bins(sizes, stick_capacity(stick_length, kerf));
  plan.sticks = sticks_of(packing.bins, fitting, stick_length);
  plan.used_fraction = used_of(plan.sticks);
  return plan;
}

}  // namespace swathe
