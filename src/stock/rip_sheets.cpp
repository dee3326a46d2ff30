#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "stock/bin_packing.hpp"
#include "stock/sticks.hpp"

namespace swathe {
namespace {

constexpr double kRounding = 1e-6;  // mm

/// Strips of a board's height that one sheet gives, a kerf between each two.
struct Strips {
  double length = 0;
  int per_sheet = 0;
};
Strips strips_along(Length side, Length other, const BoardKeys& keys) {
  const double step = (keys.height + keys.kerf).mm();
  const double across = (other + keys.kerf).mm() + kRounding;
  return {side.mm(), static_cast<int>(std::floor(across / step))};
}

/// The sheets that strips come from, all of one length.
void add_sheets(const Strips& strips, std::size_t wanted, std::vector<RippedSheet>& sheets) {
  for (int left = static_cast<int>(wanted); left > 0; left -= strips.per_sheet)
    sheets.push_back({strips.length, std::min(left, strips.per_sheet)});
}

int sheets_for(std::size_t sticks, const Strips& strips) {
  const auto count = static_cast<int>(sticks);
  return (count + strips.per_sheet - 1) / strips.per_sheet;
}

class Ripper {
 public:
  Ripper(const BoardKeys& keys, Strips longer, Strips shorter)
      : kerf_(keys.kerf.mm()), longer_(longer), shorter_(shorter) {}

  /// All sheets ripped along one side.
  SheetPlan one_way(const std::vector<StockCut>& boards, const Strips& strips) const {
    SheetPlan plan;
    plan.boards = cut_sticks(boards, strips.length, kerf_);
    add_sheets(strips, plan.boards.sticks.size(), plan.sheets);
    return plan;
  }

  /// Fewer sheets than `most`, some or all ripped along the shorter side; nothing where there are
  /// none.
  std::optional<SheetPlan> fewer(const std::vector<StockCut>& boards, int most) const {
    std::vector<std::int64_t> sizes;
    for (const StockCut& board : boards) sizes.push_back(stick_share(board, kerf_));
    const std::int64_t all = std::accumulate(sizes.begin(), sizes.end(), std::int64_t{0});
    const std::int64_t sheet = std::max(room(longer_), room(shorter_));
    for (auto sheets = static_cast<int>((all + sheet - 1) / sheet); sheets < most; ++sheets)
      for (int turned = 1; turned <= sheets; ++turned)
        if (auto plan = with(boards, sizes, sheets - turned, turned)) return plan;
    return std::nullopt;
  }

 private:
  static std::size_t strips_of(int sheets, const Strips& strips) {
    return static_cast<std::size_t>(sheets) * static_cast<std::size_t>(strips.per_sheet);
  }

  std::int64_t room(const Strips& strips) const {
    return strips.per_sheet * stick_capacity(strips.length, kerf_);
  }

  std::optional<SheetPlan> with(const std::vector<StockCut>& boards,
                                const std::vector<std::int64_t>& sizes, int along,
                                int turned) const {
    const std::size_t of_longer = strips_of(along, longer_),
                      of_shorter = strips_of(turned, shorter_);
    const auto bins = pack_into(sizes, {{stick_capacity(longer_.length, kerf_), of_longer},
                                        {stick_capacity(shorter_.length, kerf_), of_shorter}});
    if (!bins) return std::nullopt;
    const auto split = bins->begin() + static_cast<std::ptrdiff_t>(of_longer);
    SheetPlan plan;
    plan.boards.sticks = sticks_of({bins->begin(), split}, boards, longer_.length);
    add_sheets(longer_, plan.boards.sticks.size(), plan.sheets);
    const auto rest = sticks_of({split, bins->end()}, boards, shorter_.length);
    add_sheets(shorter_, rest.size(), plan.sheets);
    plan.boards.sticks.insert(plan.boards.sticks.end(), rest.begin(), rest.end());
    plan.boards.used_fraction = used_of(plan.boards.sticks);
    return plan;
  }

  double kerf_;
  Strips longer_, shorter_;
};

}  // namespace

SheetPlan rip_sheets(const std::vector<StockCut>& boards, const BoardKeys& keys) {
  const Length longest = std::max(keys.stock[0], keys.stock[1]);
  const Length shortest = std::min(keys.stock[0], keys.stock[1]);
  const Strips longer = strips_along(longest, shortest, keys);
  const Strips shorter = strips_along(shortest, longest, keys);
  const Ripper ripper(keys, longer, shorter);
  SheetPlan plan;
  if (longer.per_sheet > 0) {
    plan = ripper.one_way(boards, longer);
    std::vector<StockCut> fitting;
    for (const StockCut& board : boards)
      if (fits_stick(board, longest.mm())) fitting.push_back(board);
    if (auto better = ripper.fewer(fitting, sheets_for(plan.boards.sticks.size(), longer))) {
      better->boards.too_long = plan.boards.too_long;
      plan = std::move(*better);
    }
  } else if (shorter.per_sheet > 0) {
    plan = ripper.one_way(boards, shorter);
  } else {
    plan.boards.too_long = boards;  // the sheet is narrower than a board is high
  }
  plan.strips_per_sheet = longer.per_sheet;
  double cut = 0;
  for (const StockStick& strip : plan.boards.sticks)
    for (const StockCut& board : strip.cuts) cut += board.length * keys.height.mm();
  const double sheet = longest.mm() * shortest.mm();
  if (!plan.sheets.empty())
    plan.used_fraction = cut / (sheet * static_cast<double>(plan.sheets.size()));
  return plan;
}

}  // namespace swathe
