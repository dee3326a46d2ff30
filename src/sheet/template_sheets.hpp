#pragma once

#include <cstddef>
#include <optional>

#include "draw/page_fill.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// Full-size templates of what a tape measure draws badly: the cut corners with their folds, the
/// ends and the windows, several on a page where they fit. Parts that are the
/// same, turned or not, are drawn once and say where they belong. One larger than the paper is
/// tiled; no pages where the paper holds none of them, nor tiles.
///
/// Requires: a bumper of the job, by its number.
Sheet template_sheets(const Made& made, std::size_t bumper, const PaperKeys& paper,
                      const Font& labels, PageFill fill = PageFill::Drawn);
/// What they are called; nothing where there are none. To know that, templates are laid out only on
/// paper that is too small for tiles.
std::optional<SheetName> template_name(const Made& made, std::size_t bumper, const PaperKeys& paper,
                                       const Font& labels);

}  // namespace swathe
