#pragma once

#include <optional>

#include "swathe/draw/drawing.hpp"
#include "swathe/draw/page_fill.hpp"
#include "swathe/make/made.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// What an observer sees: each number square on and at its worst readable angle, from the job's
/// nearest distance, with its height on the cloth and as seen; then the sight chart with a row for
/// each circle and each face.
/// No pages where no number stands on the covers.
Sheet view_sheet(const Made& made, const PaperKeys& paper, const Font& labels,
                 PageFill fill = PageFill::Drawn);
/// What it is called; nothing where it has no pages.
std::optional<SheetName> view_name(const Made& made, const PaperKeys& paper);

}  // namespace swathe
