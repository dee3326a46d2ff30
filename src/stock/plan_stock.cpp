#include "stock/weigh.hpp"
#include "swathe/stock.hpp"

namespace swathe {
namespace {

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

}  // namespace

int padded_sets(const Job& job) {
  const bool changed = job.cloth.fixing == Fixing::HookAndLoop;
  return changed ? 1 : static_cast<int>(job.cloth.colors.size());
}

Stock plan_stock(const Job& job, const std::vector<Piece>& boards,
                 const std::vector<Piece>& padding, const std::vector<Pattern>& patterns,
                 const std::vector<std::vector<ClothJoin>>& joins) {
  const auto sets = static_cast<std::size_t>(padded_sets(job));
  Stock stock;
  const SheetPlan ripped = rip_sheets(cuts_of(boards, sets), job.boards);
  stock.boards = ripped.boards;
  stock.strips_per_sheet = ripped.strips_per_sheet;
  stock.ripped = ripped.sheets;
  stock.sheets = static_cast<int>(ripped.sheets.size());
  stock.sheets_used = ripped.used_fraction;
  stock.padding = cut_sticks(cuts_of(padding, sets), job.padding.stock.mm(), 0.0);  // a knife
  ClothLay lay = lay_cloth(patterns, joins, job.cloth, "");
  for (const ClothColor& color : job.cloth.colors) {
    lay.color = color.name;
    stock.cloth.push_back(lay);
  }
  stock.weights = weigh(job, boards, padding, patterns);
  for (const BumperWeight& weight : stock.weights) {
    stock.set.boards_g += weight.boards_g;
    stock.set.padding_g += weight.padding_g;
    stock.set.cloth_g += weight.cloth_g;
    stock.set.fasteners_g += weight.fasteners_g;
    stock.set.unknown_brackets += weight.unknown_brackets;
  }
  return stock;
}

}  // namespace swathe
