#include "cairo_floor.hpp"

#include <cairo-pdf.h>
#include <cairo-svg.h>

#include <cmath>
#include <cstdlib>
#include <string>

#include "example.hpp"
#include "main_job.hpp"
#include "swathe/write.hpp"

namespace swathe::bench {
namespace {

cairo_status_t append(void* bytes, const unsigned char* data, unsigned size) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), size);
  return CAIRO_STATUS_SUCCESS;
}

/// As many straight pieces, somewhere on the page.
void lines(cairo_t* context, std::size_t pieces, const PageLoad& page) {
  cairo_move_to(context, 10, 10);
  for (std::size_t k = 1; k <= pieces; ++k) {
    const double along = static_cast<double>(k * 7919 % 1000) / 1000.0;
    cairo_line_to(context, along * page.width_mm, std::fmod(along * 37.0, 1.0) * page.height_mm);
  }
}

const cairo_user_data_key_t kLetters = {};

cairo_status_t draw_letter(cairo_scaled_font_t* font, unsigned long glyph, cairo_t* context,
                           cairo_text_extents_t* extents) {
  const auto& letters = *static_cast<const std::map<unsigned long, std::vector<type::Curve>>*>(
      cairo_font_face_get_user_data(cairo_scaled_font_get_font_face(font), &kLetters));
  extents->x_advance = 0.6;
  for (const type::Curve& curve : letters.at(glyph)) {
    if (curve.verb == type::Curve::Verb::Move) cairo_move_to(context, curve.to.x, -curve.to.y);
    if (curve.verb == type::Curve::Verb::Line) cairo_line_to(context, curve.to.x, -curve.to.y);
    if (curve.verb == type::Curve::Verb::Cubic)
      cairo_curve_to(context, curve.a.x, -curve.a.y, curve.b.x, -curve.b.y, curve.to.x,
                     -curve.to.y);
    if (curve.verb == type::Curve::Verb::Close) cairo_close_path(context);
  }
  cairo_fill(context);
  return CAIRO_STATUS_SUCCESS;
}

/// As many letters, each standing for one character.
void words(cairo_t* context, const PageLoad::Text& text, const PageLoad& page) {
  const double c = text.em_mm * std::cos(text.turn), s = text.em_mm * std::sin(text.turn);
  const cairo_matrix_t size = {c, s, -s, c, 0, 0};
  cairo_set_font_matrix(context, &size);
  std::vector<cairo_glyph_t> glyphs;
  const std::string characters(text.glyphs.size(), 'x');
  const std::vector<cairo_text_cluster_t> clusters(text.glyphs.size(), {1, 1});
  for (const unsigned long glyph : text.glyphs) {
    const double along = 0.6 * static_cast<double>(glyphs.size());
    glyphs.push_back({glyph, 0.3 * page.width_mm + along * c, 0.3 * page.height_mm + along * s});
  }
  const int count = static_cast<int>(glyphs.size());
  cairo_show_text_glyphs(context, characters.data(), count, glyphs.data(), count, clusters.data(),
                         count, static_cast<cairo_text_cluster_flags_t>(0));
}

void draw(cairo_t* context, const PageLoad& page, cairo_font_face_t* font) {
  for (const auto& area : page.areas) {
    for (const std::size_t pieces : area) lines(context, pieces, page);
    cairo_fill(context);
  }
  for (const auto& [kind, strokes] : page.strokes) {
    const LineStyle& style = style_of(kind);
    cairo_set_line_width(context, style.width_mm);
    cairo_set_dash(context, style.dashes_mm.data(), static_cast<int>(style.dashes_mm.size()), 0);
    for (const std::size_t pieces : strokes) lines(context, pieces, page);
    cairo_stroke(context);
  }
  cairo_set_font_face(context, font);
  for (const PageLoad::Text& text : page.texts) words(context, text, page);
  cairo_show_page(context);
}

}  // namespace

CairoLoad load_of_example() {
  const Font font = labels();
  CairoLoad load;
  for (const Sheet& sheet : all_sheets(made_example(), font)) {
    FileLoad& file = load.files.emplace_back(FileLoad{has_pictures(sheet), {}});
    for (const Page& page : sheet.pages) {
      PageLoad& on = file.pages.emplace_back(PageLoad{page.width_mm, page.height_mm, {}, {}, {}});
      for (const draw::Mark& mark : page.drawing.marks()) {
        if (const auto* line = std::get_if<LineMark>(&mark))
          on.strokes[line->kind].push_back(line->path.vertices.size());
        if (const auto* fill = std::get_if<FillMark>(&mark)) {
          auto& area = on.areas.emplace_back();
          for (const plane::Path& path : fill->outlines) area.push_back(path.vertices.size());
        }
        if (const auto* text = std::get_if<TextMark>(&mark)) {
          auto& drawn = on.texts.emplace_back(
              PageLoad::Text{text->height_mm / font.cap_height(), text->turn, {}});
          for (const ShapedGlyph& glyph : font.shape(text->text)) {
            drawn.glyphs.push_back(glyph.glyph);
            load.letters[glyph.glyph] = font.outline(glyph.glyph);
          }
        }
      }
    }
  }
  return load;
}

std::size_t cairo_floor(const CairoLoad& load) {
  constexpr double kPointsPerMm = 72 / 25.4;
  std::size_t total = 0;
  for (const FileLoad& file : load.files) {
    // A font a file, as any program that draws one file has.
    cairo_font_face_t* font = cairo_user_font_face_create();
    cairo_user_font_face_set_render_glyph_func(font, draw_letter);
    cairo_font_face_set_user_data(
        font, &kLetters, const_cast<void*>(static_cast<const void*>(&load.letters)), nullptr);
    std::string bytes;
    cairo_surface_t* pdf = cairo_pdf_surface_create_for_stream(append, &bytes, 1, 1);
    for (const PageLoad& page : file.pages) {
      const double width = kPointsPerMm * page.width_mm, height = kPointsPerMm * page.height_mm;
      cairo_pdf_surface_set_size(pdf, width, height);
      cairo_t* context = cairo_create(pdf);
      cairo_scale(context, kPointsPerMm, kPointsPerMm);
      draw(context, page, font);
      cairo_destroy(context);
      if (!file.pictures) continue;
      cairo_surface_t* svg = cairo_svg_surface_create_for_stream(append, &bytes, width, height);
      context = cairo_create(svg);
      cairo_scale(context, kPointsPerMm, kPointsPerMm);
      draw(context, page, font);
      cairo_destroy(context);
      cairo_surface_finish(svg);
      cairo_surface_destroy(svg);
    }
    cairo_surface_finish(pdf);
    if (cairo_surface_status(pdf) != CAIRO_STATUS_SUCCESS) std::abort();
    cairo_surface_destroy(pdf);
    cairo_font_face_destroy(font);
    total += bytes.size();
  }
  return total;
}

}  // namespace swathe::bench
