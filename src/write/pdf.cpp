#include <cairo-pdf.h>

#include <utility>

#include "base/memory_watch.hpp"
#include "swathe/write.hpp"
#include "write/cairo_page.hpp"
#include "write/label_font.hpp"
#include "write/pdf_viewer.hpp"

namespace swathe {
namespace {

constexpr double kPointsPerMm = 72.0 / 25.4;

}  // namespace

std::string to_pdf(const Sheet& sheet, const Font& labels, const PdfOptions& options) {
  std::string bytes;
  const MemoryWatch watch;
  LabelFont font(labels);
  const CairoHandle<cairo_surface_t> surface(
      cairo_pdf_surface_create_for_stream(append_bytes, &bytes, 1, 1));
  // From 1.17.6 on, Cairo hides the table of objects of a PDF 1.5 in a packed stream.
  const bool packs = cairo_version() >= CAIRO_VERSION_ENCODE(1, 17, 6);
  cairo_pdf_surface_restrict_to_version(surface.get(),
                                        packs ? CAIRO_PDF_VERSION_1_4 : CAIRO_PDF_VERSION_1_5);
  const auto describe = [&](cairo_pdf_metadata_t what, const char* words) {
    cairo_pdf_surface_set_metadata(surface.get(), what, words);
  };
  describe(CAIRO_PDF_METADATA_TITLE, sheet.title.c_str());
  describe(CAIRO_PDF_METADATA_CREATOR, "Swathe");
  describe(CAIRO_PDF_METADATA_CREATE_DATE, options.created.c_str());

  for (const Page& page : sheet.pages) {
    cairo_pdf_surface_set_size(surface.get(), kPointsPerMm * page.width_mm * page.print.x,
                               kPointsPerMm * page.height_mm * page.print.y);
    if (!page.name.empty()) cairo_pdf_surface_set_page_label(surface.get(), page.name.c_str());
    const CairoHandle<cairo_t> context(cairo_create(surface.get()));
    begin_page(context.get(), page.height_mm, kPointsPerMm, page.print);
    draw_fills_and_lines(context.get(), page.drawing);
    for (const draw::Mark& mark : page.drawing.marks())
      if (const auto* const text = std::get_if<TextMark>(&mark)) font.show(context.get(), *text);
    cairo_show_page(context.get());
    throw_on(cairo_status(context.get()));
  }
  cairo_surface_finish(surface.get());
  throw_on(cairo_surface_status(surface.get()));
  watch.require();  // where memory gave out, Cairo may have left parts of the file out unsaid
  return is_at_full_size(sheet.kind) ? with_true_size(std::move(bytes)) : bytes;
}

}  // namespace swathe
