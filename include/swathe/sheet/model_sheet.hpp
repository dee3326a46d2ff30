#pragma once

#include <cstddef>
#include <string>

#include "swathe/draw/drawing.hpp"
#include "swathe/make/made.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// How small and how large a proof model may be, paper over cloth.
inline constexpr double kLeastModel = 1.0 / 20, kMostModel = 1.0;

/// A bumper's cover made small, on one sheet of card to cut out, fold and try: the outside up, each
/// line at `scale`, words as large as ever, no staples. On the paper asked for, else on the
/// smallest paper of its series that holds it; no pages where none does.
///
/// Requires: a bumper of the job, by its number; a scale from kLeastModel to kMostModel.
/// Holds (model_sheet_test.cpp): (1) the outline's area is the cover's times the scale's square.
Sheet model_sheet(const Made& made, std::size_t bumper, double scale, const PaperKeys& asked,
                  const Font& labels);

/// "1/4" for 0.25, else its decimals.
std::string scale_words(double scale);

}  // namespace swathe
