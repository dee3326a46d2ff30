#pragma once

#include <string>
#include <vector>

#include "numeral/method.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// Sheet left round what is cut out of a stencil or a mask.
inline constexpr double kStencilMargin = 12.0;

/// Something to cut for the number, with what is written under it, in a frame; lower left corner at
/// the origin.
struct NumeralCell {
  std::string name;  ///< "digit 4, white": what a tile of it is called
  Drawing drawing;
  FlatPoint size;
};

/// What there is to cut for the job's number by its method: each digit once, or each mask of a
/// paint-mask and each stencil for a whole number, in one piece, with how often it is needed; where
/// the digits have a white outline, the white pieces first.
///
/// Requires: the job has numerals.
std::vector<NumeralCell> numeral_cells(const Made& made, const Font& labels);

/// Whether a digit's stencil, laid in its place, reaches over the digit beside it.
bool covers_neighbor(const Made& made);

/// How often a number's mask of these digits is cut: its places in every color, and spares. A part
/// of a split number has spares only where the number stands whole nowhere.
int masks_of(const Numerals& numerals, const std::string& text, int spares, int colors);

}  // namespace swathe
