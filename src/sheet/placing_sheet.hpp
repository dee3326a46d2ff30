#pragma once

#include <optional>

#include "draw/page_fill.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// A numeral's base line and center line run so far past its ink, on the pattern and on the strip
/// that is pinned to it.
inline constexpr double kNumeralRunOut = 15.0;

/// Where each digit goes on the outside of the cloth: tables of every number's lines and digits,
/// and at full size a strip for each that is pinned on the lines' ends, with each digit's edges and
/// middle along the base line; in tiles where it is longer than the paper. A number that is cut in
/// one sheet needs no strip.
/// No pages where no number stands on a cover.
Sheet placing_sheet(const Made& made, const PaperKeys& paper, const Font& labels,
                    PageFill fill = PageFill::Drawn);
/// What it is called; nothing where there is none.
std::optional<SheetName> placing_name(const Made& made, const PaperKeys& paper);

}  // namespace swathe
