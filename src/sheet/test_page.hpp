#pragma once

#include <optional>

#include "draw/page_fill.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The page that is printed before all others: two 100 mm scales to measure, lines to write down
/// what they measure, and what to type into the job where that is not 100 mm.
/// No page where the paper is too small for its scales and words.
Sheet test_page(const Made& made, const PaperKeys& paper, const Font& labels,
                PageFill fill = PageFill::Drawn);
/// What it is called; nothing where there is none.
std::optional<SheetName> test_page_name(const PaperKeys& paper);

}  // namespace swathe
