#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "draw/page_fill.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// Why a bumper's cover cannot be cut on a fold: "its windows and numerals are not alike on both
/// halves"; empty where it is its own mirror image, numerals' places, windows and brackets in.
///
/// Requires (here and below): a bumper of the job, by its number.
std::string not_on_fold(const Made& made, std::size_t bumper);

/// Half of such a cover at full size, in tiles, to be laid with its long edge on
/// a fold of the cloth. No pages where it cannot be cut on a fold, or the paper is too small for
/// tiles.
///
/// Holds (fold_sheet_test.cpp): (1) the half and its mirror image together are the cover's cuts;
///   (2) what lies beyond the fold has its name on the half.
Sheet fold_sheet(const Made& made, std::size_t bumper, const PaperKeys& paper, const Font& labels,
                 PageFill fill = PageFill::Drawn);
/// What it is called; nothing where it has no pages.
std::optional<SheetName> fold_name(const Made& made, std::size_t bumper, const PaperKeys& paper);

}  // namespace swathe
