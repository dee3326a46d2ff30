#pragma once

#include <vector>

#include "swathe/stock.hpp"

namespace swathe {

/// Boards that no sheet of the job's can give: DoesNotFit at boards.stock, for the longest of them,
/// with the sheet that would do and the place where its bumper can be split instead.
Refusals board_faults(const Job& job, const Frame& frame, const Stock& stock,
                      const std::vector<bumper::Piece>& boards);

}  // namespace swathe
