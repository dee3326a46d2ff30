#pragma once

#include <cstdint>
#include <vector>

#include "swathe/stock.hpp"

namespace swathe {

/// A stick in units of the grid. n pieces need n - 1 cuts between them, so each piece gets a kerf
/// added to it, and the stick one more.
std::int64_t stick_capacity(double stick_length, double kerf);
std::int64_t stick_share(const StockCut& piece, double kerf);
bool fits_stick(const StockCut& piece, double stick_length);

/// Sticks with the pieces of each bin. Those that are cut alike stand together, the longest pieces
/// first; sticks of which nothing is cut are left out.
std::vector<StockStick> sticks_of(const std::vector<std::vector<std::size_t>>& bins,
                                  const std::vector<StockCut>& pieces, double stick_length);

/// Of the sticks' lengths, what is cut from them.
double used_of(const std::vector<StockStick>& sticks);

}  // namespace swathe
