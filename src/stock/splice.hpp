#pragma once

#include <optional>
#include <vector>

#include "swathe/stock.hpp"

namespace swathe {

/// Where a piece that is longer than its stock is glued together: as few joints as will do, each as
/// far along as the stock reaches, and none nearer a bend or an end than a hand's breadth. Nothing
/// where the piece is no longer than its stock, or has no place for a joint.
std::optional<Splice> splice_of(const bumper::Piece& piece, double stock_mm);

/// What is cut for one: "A front to left 1" and "A front to left 2", from its start.
std::vector<StockCut> parts_of(const Splice& splice);

/// The shortest stock that a piece can be glued together from.
double least_to_splice(const bumper::Piece& piece);

}  // namespace swathe
