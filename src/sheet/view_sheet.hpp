#pragma once

#include <optional>

#include "draw/page_fill.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// What people see: each number straight on and at the worst angle where it can be read, from the
/// job's nearest distance, with its height on the cloth and as seen; then the sight chart, with a
/// row for each circle and each side.
/// No pages where no number stands on the covers.
Sheet view_sheet(const Made& made, const PaperKeys& paper, const Font& labels,
                 PageFill fill = PageFill::Drawn);
/// What it is called; nothing where it has no pages.
std::optional<SheetName> view_name(const Made& made, const PaperKeys& paper);

}  // namespace swathe
