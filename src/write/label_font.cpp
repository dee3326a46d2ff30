#include "write/label_font.hpp"

#include <cmath>
#include <string_view>
#include <vector>

#include "base/maths.hpp"

namespace swathe {
namespace {

const cairo_user_data_key_t kOwner = {};

/// A line of text in Cairo's terms: glyphs at their places, and which bytes each stands for.
struct Line {
  std::vector<cairo_glyph_t> glyphs;
  std::vector<cairo_text_cluster_t> clusters;
};

Line lay_out(const TextMark& mark, const std::vector<ShapedGlyph>& shaped, double em) {
  double width = 0;
  for (const ShapedGlyph& glyph : shaped) width += em * glyph.advance;
  const FlatPoint along = plane::direction(mark.turn), up = left_of(along);
  FlatPoint pen = mark.at;
  if (mark.anchor == draw::Anchor::Middle) pen = pen - 0.5 * width * along;
  if (mark.anchor == draw::Anchor::Right) pen = pen - width * along;

  // Cairo's letters hang upside down in their font; poppler then reads steep text from its end,
  // letter by letter. Such a text is one cluster: its words are written out beside its letters.
  const bool steep = std::abs(along.y) > std::abs(along.x);
  Line line;
  line.glyphs.reserve(shaped.size());
  for (std::size_t k = 0; k < shaped.size(); ++k) {
    const ShapedGlyph& glyph = shaped[k];
    const FlatPoint at = pen + em * (glyph.offset.x * along + glyph.offset.y * up);
    line.glyphs.push_back({glyph.glyph, at.x, at.y});
    pen = pen + em * glyph.advance * along;
    if (k == 0 || (!steep && glyph.cluster != shaped[k - 1].cluster))
      line.clusters.push_back({0, 0});
    const std::size_t end = k + 1 < shaped.size() ? shaped[k + 1].cluster : mark.text.size();
    line.clusters.back().num_glyphs += 1;
    line.clusters.back().num_bytes += static_cast<int>(end - glyph.cluster);
  }
  return line;
}

}  // namespace

LabelFont::LabelFont(const Font& font) : letters_(font), font_(cairo_user_font_face_create()) {
  cairo_user_font_face_set_render_glyph_func(font_.get(), render);
  throw_on(cairo_font_face_set_user_data(font_.get(), &kOwner, this, nullptr));
}

cairo_status_t LabelFont::render(cairo_scaled_font_t* font, unsigned long glyph, cairo_t* context,
                                 cairo_text_extents_t* extents) try {
  const auto& self = *static_cast<const LabelFont*>(
      cairo_font_face_get_user_data(cairo_scaled_font_get_font_face(font), &kOwner));
  const auto id = static_cast<unsigned>(glyph);
  if (const auto seen = self.advances_.find(id); seen != self.advances_.end())
    extents->x_advance = seen->second;
  for (const type::Curve& curve : self.letters_.outline(id)) {  // glyph space: em units, y down
    switch (curve.verb) {
      case type::Curve::Verb::Move:
        cairo_move_to(context, curve.to.x, -curve.to.y);
        break;
      case type::Curve::Verb::Line:
        cairo_line_to(context, curve.to.x, -curve.to.y);
        break;
      case type::Curve::Verb::Cubic:
        cairo_curve_to(context, curve.a.x, -curve.a.y, curve.b.x, -curve.b.y, curve.to.x,
                       -curve.to.y);
        break;
      case type::Curve::Verb::Close:
        cairo_close_path(context);
        break;
    }
  }
  cairo_fill(context);
  return CAIRO_STATUS_SUCCESS;
} catch (...) {
  return CAIRO_STATUS_NO_MEMORY;  // nothing is thrown through Cairo
}

void LabelFont::show(cairo_t* context, const TextMark& mark) {
  if (mark.text.empty() || !(letters_.cap_height() > 0)) return;
  const std::vector<ShapedGlyph> shaped = letters_.shape(mark.text, kLabelFigures);
  for (std::size_t k = 0; k < shaped.size(); ++k) {
    const auto [slot, fresh] = advances_.try_emplace(shaped[k].glyph);
    if (!fresh) continue;
    const std::size_t end = k + 1 < shaped.size() ? shaped[k + 1].cluster : mark.text.size();
    const std::string_view alone =
        std::string_view(mark.text).substr(shaped[k].cluster, end - shaped[k].cluster);
    for (const ShapedGlyph& glyph : letters_.shape(alone, kLabelFigures))
      slot->second += glyph.advance;
  }
  const double em = mark.height_mm / letters_.cap_height();
  const Line line = lay_out(mark, shaped, em);
  const double c = em * maths::cos(mark.turn), s = em * maths::sin(mark.turn);
  const cairo_matrix_t font_matrix = {c, s, s, -c, 0, 0};  // the page's y goes up, a glyph's down
  cairo_set_font_face(context, font_.get());
  cairo_set_font_matrix(context, &font_matrix);
  cairo_show_text_glyphs(context, mark.text.data(), static_cast<int>(mark.text.size()),
                         line.glyphs.data(), static_cast<int>(line.glyphs.size()),
                         line.clusters.data(), static_cast<int>(line.clusters.size()),
                         static_cast<cairo_text_cluster_flags_t>(0));
}

}  // namespace swathe
