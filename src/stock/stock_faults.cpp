#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/workshop.hpp"
#include "pattern/joins.hpp"
#include "rules/practice.hpp"
#include "stock/splice.hpp"
#include "swathe/stock.hpp"

namespace swathe {
namespace {

/// The narrowest roll on which every piece of every cover lies, all along it or, if they may,
/// across it; across, a piece is no wider than a length of cloth is long.
double least_roll(const std::vector<plane::Box>& pieces, const ClothKeys& cloth, bool across) {
  const double longest =
      cloth.longest_piece ? cloth.longest_piece->mm() : std::numeric_limits<double>::infinity();
  double along = 0, turned = 0, either = 0;
  for (const plane::Box& piece : pieces) {
    const double if_turned =
        piece.height() > longest ? std::numeric_limits<double>::infinity() : piece.width();
    along = std::max(along, piece.height());
    turned = std::max(turned, if_turned);
    either = std::max(either, std::min(piece.height(), if_turned));
  }
  if (!across) return along;
  return cloth.one_way ? std::min(along, turned) : either;  // one way: all of them lie alike
}

void add_roll_fault(const Job& job, const Stock& stock, const std::vector<Pattern>& patterns,
                    const std::vector<std::vector<ClothJoin>>& joins, Refusals& faults) {
  if (stock.cloth.empty() || stock.cloth.front().does_not_fit.empty()) return;
  std::vector<plane::Box> pieces;
  for (std::size_t k = 0; k < patterns.size(); ++k)
    for (const ClothPart& part :
         cloth_parts(patterns[k], joins.empty() ? std::vector<ClothJoin>() : joins[k]))
      pieces.push_back(part.box);
  const ClothKeys& cloth = job.cloth;
  const std::string& name = stock.cloth.front().does_not_fit.front();
  const std::string least =
      exact(on_tape(mm(least_roll(pieces, cloth, cloth.may_lie_across)), job.units, Rounding::Up),
            job.units);
  const bool turning_helps =
      !cloth.may_lie_across && least_roll(pieces, cloth, true) <= cloth.roll_width.mm();
  faults.push_back({Why::DoesNotFit,
                    fmt::format("the roll is {} wide, which cover \"{}\" is too large for, "
                                "expected at least {}{}",
                                exact(cloth.roll_width, job.units), name, least,
                                turning_helps ? ", or cloth.may_lie_across = true" : ""),
                    job.places.of("cloth.roll_width"),
                    {{"cloth.roll_width", "\"" + least + "\""}}});
}

void add_padding_faults(const Job& job, const std::vector<bumper::Piece>& padding,
                        Refusals& faults) {
  const bumper::Piece* worst = nullptr;
  const double stock = job.padding.stock.mm();
  for (const bumper::Piece& piece : padding) {
    if (piece.length_mm <= stock || least_to_splice(piece) <= stock) continue;
    if (!worst || least_to_splice(piece) > least_to_splice(*worst)) worst = &piece;
  }
  if (!worst) return;
  const double longer = std::min(least_to_splice(*worst), worst->length_mm);
  const std::string least = exact(on_tape(mm(longer), job.units, Rounding::Up), job.units);
  faults.push_back(
      {Why::DoesNotFit,
       fmt::format("the padding of {} is {} long and has no place for a joint of pieces of {}: "
                   "joints keep {} from corners and ends, expected at least {}",
                   piece_name(*worst), measured(mm(worst->length_mm), job.units),
                   exact(job.padding.stock, job.units),
                   exact(practice::kJointFromCorner, job.units), least),
       job.places.of("padding.stock"),
       {{"padding.stock", "\"" + least + "\""}}});
}

}  // namespace

Refusals stock_faults(const Job& job, const Stock& stock, const std::vector<bumper::Piece>& padding,
                      const std::vector<Pattern>& patterns,
                      const std::vector<std::vector<ClothJoin>>& joins) {
  Refusals faults;
  add_roll_fault(job, stock, patterns, joins, faults);
  add_padding_faults(job, padding, faults);
  return faults;
}

}  // namespace swathe
