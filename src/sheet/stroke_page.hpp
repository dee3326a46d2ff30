#pragma once

#include "draw/page_fill.hpp"
#include "draw/page_head.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The number's digits in small, shaded by the width of their stroke, each with what it measures.
///
/// Requires: the job has numerals.
Page stroke_page(const Made& made, const PaperKeys& paper, const Font& labels, const PageHead& head,
                 PageFill fill = PageFill::Drawn);

}  // namespace swathe
