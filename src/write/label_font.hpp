#pragma once

#include <cairo.h>

#include <map>

#include "swathe/draw.hpp"
#include "swathe/type.hpp"
#include "write/cairo_handles.hpp"

namespace swathe {

/// A font given to Cairo as shapes of our own, so that a PDF holds real text that can be searched
/// and copied, and no system font is ever asked for.
class LabelFont {
 public:
  explicit LabelFont(const Font& font);
  LabelFont(const LabelFont&) = delete;
  LabelFont& operator=(const LabelFont&) = delete;

  /// Requires: the context lives no longer than this font.
  void show(cairo_t* context, const TextMark& mark);

 private:
  static cairo_status_t render(cairo_scaled_font_t* font, unsigned long glyph, cairo_t* context,
                               cairo_text_extents_t* extents);

  const Font& letters_;
  CairoHandle<cairo_font_face_t> font_;
  std::map<unsigned, double> advances_;  ///< of glyphs seen, each by itself, em
};

}  // namespace swathe
