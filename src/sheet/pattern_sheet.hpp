#pragma once

#include <cstddef>
#include <optional>

#include "draw/page_fill.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// One bumper's cover at full size on one page of its own, with title, key, check scales, and the
/// overall length and width to tape before cutting.
///
/// Requires (here and below): a bumper of the job, by its number.
Sheet pattern_sheet(const Made& made, std::size_t bumper, const Font& labels);
SheetName pattern_name(const Made& made, std::size_t bumper);

/// The same cover alone, on a page hardly larger than it, for tiling.
Page pattern_piece(const Made& made, std::size_t bumper, const Font& labels);

/// That page in tiles; no pages where the paper is too small for tiles.
Sheet tiles_sheet(const Made& made, std::size_t bumper, const PaperKeys& paper, const Font& labels,
                  PageFill fill = PageFill::Drawn);
/// What they are called; nothing where there are none.
std::optional<SheetName> tiles_name(const Made& made, std::size_t bumper, const PaperKeys& paper);

}  // namespace swathe
