#include <algorithm>
#include <utility>

#include "stock/splice.hpp"
#include "stock/weigh.hpp"
#include "swathe/stock.hpp"

namespace swathe {
namespace {

/// Every piece of every set, one by one.
std::vector<StockCut> cuts_of(const std::vector<bumper::Piece>& pieces, std::size_t sets) {
  std::vector<StockCut> cuts;
  for (std::size_t set = 0; set < sets; ++set) {
    for (const bumper::Piece& piece : pieces) {
      for (int i = 0; i < piece.count; ++i) cuts.push_back({piece_name(piece), piece.length_mm});
    }
  }
  return cuts;
}

/// Padding is cut with a knife, and glued together where it is longer than it is sold.
StockPlan plan_padding(const std::vector<bumper::Piece>& padding, std::size_t sets, double stock) {
  std::vector<Splice> splices;
  for (const bumper::Piece& piece : padding)
    if (auto splice = splice_of(piece, stock)) splices.push_back(*std::move(splice));
  std::vector<StockCut> cuts;
  for (const StockCut& cut : cuts_of(padding, sets)) {
    const auto splice = std::ranges::find(splices, cut.label, &Splice::label);
    if (splice == splices.end()) {
      cuts.push_back(cut);
      continue;
    }
    const std::vector<StockCut> parts = parts_of(*splice);
    cuts.insert(cuts.end(), parts.begin(), parts.end());
  }
  StockPlan plan = cut_sticks(cuts, stock, 0.0);
  plan.splices = std::move(splices);
  return plan;
}

int joints_of(const std::vector<Pattern>& patterns) {
  std::size_t joints = 0;
  for (const Pattern& pattern : patterns) joints += pattern.corners.size();
  return static_cast<int>(joints);
}

}  // namespace

int padded_sets(const Job& job) {
  const bool changed = job.cloth.fixing == Fixing::HookAndLoop;
  return changed ? 1 : static_cast<int>(job.cloth.colors.size());
}

Stock plan_stock(const Job& job, const std::vector<bumper::Piece>& boards,
                 const std::vector<bumper::Piece>& padding, const std::vector<Pattern>& patterns,
                 const std::vector<std::vector<ClothJoin>>& joins) {
  const auto sets = static_cast<std::size_t>(padded_sets(job));
  Stock stock;
  const SheetPlan ripped = rip_sheets(cuts_of(boards, sets), job.boards);
  stock.boards = ripped.boards;
  stock.strips_per_sheet = ripped.strips_per_sheet;
  stock.ripped = ripped.sheets;
  stock.sheets = static_cast<int>(ripped.sheets.size());
  stock.sheets_used = ripped.used_fraction;
  stock.screws = screws_for(job, joints_of(patterns));
  stock.padding = plan_padding(padding, sets, job.padding.stock.mm());
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
