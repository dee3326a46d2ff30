#include <cmath>

#include "base/memory_watch.hpp"
#include "swathe/write.hpp"
#include "write/cairo_handles.hpp"
#include "write/cairo_page.hpp"
#include "write/text_outline.hpp"

namespace swathe {
namespace {

/// Letters are filled as shapes: Cairo would set a font's letters on whole dots.
void draw_text(cairo_t* context, const TextMark& mark, const Font& labels) {
  for (const type::Curve& curve : outline_of(mark, labels)) {
    switch (curve.verb) {
      case type::Curve::Verb::Move:
        cairo_move_to(context, curve.to.x, curve.to.y);
        break;
      case type::Curve::Verb::Line:
        cairo_line_to(context, curve.to.x, curve.to.y);
        break;
      case type::Curve::Verb::Cubic:
        cairo_curve_to(context, curve.a.x, curve.a.y, curve.b.x, curve.b.y, curve.to.x, curve.to.y);
        break;
      case type::Curve::Verb::Close:
        cairo_close_path(context);
        break;
    }
  }
  cairo_fill(context);
}

}  // namespace

std::string to_png(const Page& page, const Font& labels, double dots_per_mm) {
  const MemoryWatch watch;
  const auto dots = [&](double mm) { return static_cast<int>(std::ceil(mm * dots_per_mm - 1e-6)); };
  const CairoHandle<cairo_surface_t> surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, dots(page.width_mm), dots(page.height_mm)));
  const CairoHandle<cairo_t> context(cairo_create(surface.get()));
  cairo_set_source_rgb(context.get(), 1, 1, 1);
  cairo_paint(context.get());
  begin_page(context.get(), page.height_mm, dots_per_mm);
  draw_fills_and_lines(context.get(), page.drawing);
  for (const draw::Mark& mark : page.drawing.marks())
    if (const auto* const text = std::get_if<TextMark>(&mark))
      draw_text(context.get(), *text, labels);
  throw_on(cairo_status(context.get()));

  std::string bytes;
  throw_on(cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes));
  watch.require();
  return bytes;
}

}  // namespace swathe
