#pragma once

#include "stock/strip_table.hpp"

namespace swathe {

/// Where a piece goes: on the last shelf, on the first that has room, on the one it fills best;
/// else on a new one.
enum class ShelfRule { Next, First, Best };

/// The pieces' boxes on shelves across the strip, the longest first, each in its first way.
Layout lay_on_shelves(const StripTable& table, const Strip& strip, ShelfRule rule);

}  // namespace swathe
