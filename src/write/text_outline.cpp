#include "write/text_outline.hpp"

namespace swathe {

std::vector<type::Curve> outline_of(const TextMark& mark, const Font& font) {
  std::vector<type::Curve> letters;
  if (!(font.cap_height() > 0)) return letters;
  const double em = mark.height_mm / font.cap_height();
  const std::vector<ShapedGlyph> shaped = font.shape(mark.text, kLabelFigures);
  double pen = 0;  // em, along the base line
  for (const ShapedGlyph& glyph : shaped) pen -= glyph.advance;
  if (mark.anchor == draw::Anchor::Left) pen = 0;
  if (mark.anchor == draw::Anchor::Middle) pen *= 0.5;

  const FlatPoint along = plane::direction(mark.turn), up = left_of(along);
  for (const ShapedGlyph& glyph : shaped) {
    const FlatPoint origin = FlatPoint{pen, 0} + glyph.offset;
    const auto placed = [&](FlatPoint p) {
      p = em * (origin + p);
      return mark.at + p.x * along + p.y * up;
    };
    for (const type::Curve& curve : font.outline(glyph.glyph))
      letters.push_back({curve.verb, placed(curve.a), placed(curve.b), placed(curve.to)});
    pen += glyph.advance;
  }
  return letters;
}

}  // namespace swathe
