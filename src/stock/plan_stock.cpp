#include <algorithm>
#include <cmath>

#include "stock/weigh.hpp"
#include "swathe/stock/stock.hpp"

namespace swathe {
namespace {

constexpr double kRounding = 1e-6;  // mm

/// Every piece of every set, one by one.
std::vector<StockCut> cuts_of(const std::vector<Piece>& pieces, std::size_t sets) {
  std::vector<StockCut> cuts;
  for (std::size_t set = 0; set < sets; ++set) {
    for (const Piece& piece : pieces) {
      for (int i = 0; i < piece.count; ++i) {
        cuts.push_back({piece.bumper + " " + piece.side, piece.length_mm});
      }
    }
  }
  return cuts;
}

/// Strips of a board's height ripped from one sheet, a kerf between each two.
int strips_of(const BackingKeys& backing) {
  const double across = std::min(backing.stock[0], backing.stock[1]).mm();
  const double step = (backing.height + backing.kerf).mm();
  return static_cast<int>(std::floor((across + backing.kerf.mm() + kRounding) / step));
}

}  // namespace

int padded_sets(const Job& job) {
  const bool changed = job.cloth.fixing == Fixing::QuickChange;
  return changed ? 1 : static_cast<int>(job.cloth.colours.size());
}

Stock plan_stock(const Job& job, const std::vector<Piece>& boards,
                 const std::vector<Piece>& padding, const std::vector<Pattern>& patterns) {
  const auto sets = static_cast<std::size_t>(padded_sets(job));
  Stock stock;
  stock.strips_per_sheet = strips_of(job.backing);
  const double strip = std::max(job.backing.stock[0], job.backing.stock[1]).mm();
  if (stock.strips_per_sheet > 0) {
    stock.boards = cut_sticks(cuts_of(boards, sets), strip, job.backing.kerf.mm());
    const int strips = static_cast<int>(stock.boards.sticks.size());
    stock.sheets = (strips + stock.strips_per_sheet - 1) / stock.strips_per_sheet;
  } else {
    stock.boards.too_long = cuts_of(boards, sets);  // the sheet is narrower than a board is high
  }
  stock.padding = cut_sticks(cuts_of(padding, sets), job.padding.stock.mm(), 0.0);  // a knife
  for (const ClothColour& colour : job.cloth.colours) {
    stock.cloth.push_back(lay_cloth(patterns, job.cloth, colour.name));
  }
  stock.weights = weigh(job, boards, padding, patterns);
  for (const BumperWeight& weight : stock.weights) {
    stock.set_g += weight.boards_g + weight.padding_g + weight.cloth_g;
  }
  return stock;
}

}  // namespace swathe
