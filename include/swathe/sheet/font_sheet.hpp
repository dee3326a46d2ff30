#pragma once

#include <string>
#include <vector>

#include "swathe/base/units.hpp"
#include "swathe/draw/drawing.hpp"
#include "swathe/job/job.hpp"
#include "swathe/type/digits.hpp"
#include "swathe/type/font.hpp"
#include "swathe/type/stroke.hpp"

namespace swathe {

/// A font with a number set in it, and what it measures, in words.
struct FontSpecimen {
  std::string name;
  std::vector<std::string> figures;  ///< a line each
  DigitLine line;
  std::vector<Stroke> strokes;  ///< of line.shapes, in their order
};

/// Fonts one below the other, all to one scale, their strokes shaded by width about `asked` (mm);
/// `words` stand under the title.
///
/// Requires: at least one font.
Sheet font_sheet(const std::vector<FontSpecimen>& fonts, const std::string& title,
                 const std::vector<std::string>& words, double asked, const PaperKeys& paper,
                 Units units, const Font& labels);

}  // namespace swathe
