#include "main_job.hpp"

#include "example.hpp"
#include "swathe/pattern.hpp"
#include "swathe/write.hpp"

namespace swathe::bench {

bool has_pictures(const Sheet& sheet) {
  return sheet.kind == SheetKind::Pattern || sheet.kind == SheetKind::Numerals ||
         sheet.kind == SheetKind::Views;
}

std::size_t main_job() {
  const Font font = labels();
  const Made made = made_example();
  const std::vector<Sheet> sheets = all_sheets(made, font);
  std::size_t bytes = report_json(made, told(sheets)).size();
  for (const Sheet& sheet : sheets) {
    bytes += to_pdf(sheet, font).size();
    if (!has_pictures(sheet)) continue;
    for (const Page& page : sheet.pages) {
      bytes += to_svg(page, sheet.title, font).size();
      if (sheet.kind != SheetKind::Views) bytes += to_dxf(page, font).size();
    }
  }
  for (const Wrap& wrap : made.wraps) bytes += to_obj(make_mesh(wrap, made.job.cloth)).size();
  return bytes;
}

}  // namespace swathe::bench
