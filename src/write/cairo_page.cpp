#include "write/cairo_page.hpp"

#include <array>
#include <vector>

#include "base/maths.hpp"

namespace swathe {
namespace {

constexpr std::size_t kKinds = static_cast<std::size_t>(LineKind::Outline) + 1;
constexpr double kCurveTolerance = 0.01;  ///< device units an arc's curves may stray from the arc

void trace_arc(cairo_t* context, FlatPoint from, FlatPoint to, double bulge) {
  const plane::Arc arc = arc_of(from, to, bulge);
  const double start = maths::atan2(from.y - arc.center.y, from.x - arc.center.x);
  const auto draw = arc.angle > 0 ? cairo_arc : cairo_arc_negative;
  draw(context, arc.center.x, arc.center.y, arc.radius, start, start + arc.angle);
}

void trace(cairo_t* context, const plane::Path& path) {
  const std::size_t count = path.vertices.size();
  if (count == 0) return;
  const plane::Vertex* from = &path.vertices[0];
  cairo_move_to(context, from->at.x, from->at.y);
  for (std::size_t k = 1; k < count; ++k) {
    const plane::Vertex* const to = &path.vertices[k];
    if (from->bulge != 0)
      trace_arc(context, from->at, to->at, from->bulge);
    else
      cairo_line_to(context, to->at.x, to->at.y);
    from = to;
  }
  if (!path.closed) return;
  if (from->bulge != 0) trace_arc(context, from->at, path.vertices[0].at, from->bulge);
  cairo_close_path(context);
}

void set_line_style(cairo_t* context, const LineStyle& style) {
  cairo_set_line_width(context, style.width_mm);
  cairo_set_dash(context, style.dashes_mm.data(), static_cast<int>(style.dashes_mm.size()), 0);
}

}  // namespace

void begin_page(cairo_t* context, double page_height_mm, double device_units_per_mm,
                draw::Stretch stretch) {
  const double across = device_units_per_mm * stretch.x, down = device_units_per_mm * stretch.y;
  const cairo_matrix_t matrix = {across, 0, 0, -down, 0, down * page_height_mm};
  cairo_set_matrix(context, &matrix);
  cairo_set_tolerance(context, kCurveTolerance);
  cairo_set_line_cap(context, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(context, CAIRO_LINE_JOIN_ROUND);
}

void draw_fills_and_lines(cairo_t* context, const Drawing& drawing) {
  std::array<std::vector<const plane::Path*>, kKinds> lines;
  for (const draw::Mark& mark : drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark)) {
      lines[static_cast<std::size_t>(line->kind)].push_back(&line->path);
    } else if (const auto* const fill = std::get_if<FillMark>(&mark)) {
      cairo_set_source_rgb(context, fill->color.red, fill->color.green, fill->color.blue);
      for (const plane::Path& outline : fill->outlines) trace(context, outline);
      cairo_fill(context);
    }
  }
  cairo_set_source_rgb(context, 0, 0, 0);
  for (std::size_t kind = 0; kind < kKinds; ++kind) {
    if (lines[kind].empty()) continue;
    set_line_style(context, style_of(static_cast<LineKind>(kind)));
    // One stroke for all of a kind: they are one black, so their order does not show.
    for (const plane::Path* const path : lines[kind]) trace(context, *path);
    cairo_stroke(context);
  }
}

}  // namespace swathe
