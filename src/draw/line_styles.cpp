#include <array>
#include <cstddef>

#include "swathe/draw.hpp"

namespace swathe {

// Dashes follow ISO 128-2 (line types 02, 04 and 05): dash 12 d, long dash 24 d, gap 3 d, dot half
// a d, where d is the line's width. Gaps are opened and dashes cut by about d more, since round
// ends lengthen every stroke, and the gaps of thin lines opened again for a bench's distance.
const LineStyle& style_of(LineKind kind) {
  static const std::array<LineStyle, 17> styles = {{
      {0.70, {}, "CUT"},
      {0.70, {}, "CUT-LAST"},
      {0.35, {8.0, 2.0, 0.2, 2.0}, "FOLD"},
      {0.35, {3.0, 2.0}, "STITCH"},
      {0.25, {9.0, 1.6, 0.2, 1.6, 0.2, 1.6}, "CORNER"},
      {0.18, {}, "STAPLE-LINE"},
      {0.35, {}, "STAPLE"},
      {0.25, {}, "PUNCH"},
      {0.35, {}, "MATCH"},
      {0.25, {}, "NUMERAL"},
      {0.25, {1.5, 1.5}, "BRIDGE"},
      {0.35, {}, "GRAIN"},
      {0.18, {}, "JOIN"},
      {0.25, {1.0, 1.5}, "TRIM"},
      {0.25, {}, "SCALE"},
      {0.18, {}, "THIN"},
      {0.35, {}, "OUTLINE"},
  }};
  static_assert(static_cast<std::size_t>(LineKind::Outline) + 1 == styles.size());
  return styles[static_cast<std::size_t>(kind)];
}

}  // namespace swathe
