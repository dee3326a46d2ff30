#pragma once

// Sheets that are asked for one by one: proof models and fonts compared.

#include <cstddef>
#include <string>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/draw.hpp"
#include "swathe/job.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

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

/// A font with a number set in it, and what it measures, in words.
struct FontSpecimen {
  std::string name;
  std::vector<std::string> figures;  ///< a line each
  DigitLine line;
  std::vector<type::Stroke> strokes;  ///< of line.shapes, in their order
};

/// Fonts one below the other, all to one scale, their strokes shaded by width about `asked` (mm);
/// `words` stand under the title.
///
/// Requires: at least one font.
Sheet font_sheet(const std::vector<FontSpecimen>& fonts, const std::string& title,
                 const std::vector<std::string>& words, double asked, const PaperKeys& paper,
                 Units units, const Font& labels);

}  // namespace swathe
