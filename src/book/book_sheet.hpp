#pragma once

#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/sheet.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The build book: where to start (start_sheet.hpp); a measured sketch; what to buy; boards and
/// padding with their cuts; the cloth as it lies on the roll; numerals; brackets and staples; the
/// order of work; an inspector's card; labels for the pieces. Counts for one set and for all
/// colors.
Sheet book_sheet(const Made& made, const PrintWays& ways, const PaperKeys& paper,
                 const Font& labels);
/// The same with print_ways(made, labels).
Sheet book_sheet(const Made& made, const PaperKeys& paper, const Font& labels);
SheetName book_name(const PaperKeys& paper);

}  // namespace swathe
