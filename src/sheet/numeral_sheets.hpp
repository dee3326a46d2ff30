#pragma once

#include <optional>

#include "draw/page_fill.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// Every digit of the number at full size, to be cut by the job's method: stencils and masks with
/// their bridges, films mirrored, cloth with its seam; how often each is needed; as many on a page
/// as fit. A digit larger than the paper is tiled.
/// No pages where the job has no numerals.
Sheet numeral_sheets(const Made& made, const PaperKeys& paper, const Font& labels,
                     PageFill fill = PageFill::Drawn);
/// What they are called; nothing where there are none.
std::optional<SheetName> numeral_name(const Made& made, const PaperKeys& paper);

}  // namespace swathe
