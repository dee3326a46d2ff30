#include "entries.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "base/print.hpp"
#include "swathe/job/limits.hpp"
#include "swathe/pattern/mesh.hpp"
#include "swathe/sheet/stems.hpp"
#include "swathe/write/dxf.hpp"
#include "swathe/write/obj.hpp"
#include "swathe/write/pdf.hpp"
#include "swathe/write/report.hpp"
#include "swathe/write/svg.hpp"
#include "table.hpp"

namespace swathe::app {
namespace {

constexpr double kDotsPerMm = 4.0;  ///< of PNG pictures: about 100 an inch

/// The pages of a sheet, a file each: as SVG, as DXF if something is cut from it, and as PNG if
/// only views are asked for, because compressing a PNG takes longer than everything else.
void add_pictures(std::vector<Entry>& entries, const Sheet& sheet, const Font& labels,
                  Wanted wanted) {
  for (std::size_t k = 0; k < sheet.pages.size(); ++k) {
    const std::string number = sheet.pages.size() == 1 ? "" : fmt::format("-{}", k + 1);
    const auto add = [&](const char* ending, std::string bytes) {
      entries.push_back(
          {{sheet.stem + number + ending, std::move(bytes)}, "1", "full size", sheet.title});
    };
    add(".svg", to_svg(sheet.pages[k], sheet.title, labels));
    if (wanted == Wanted::Views) add(".png", to_png(sheet.pages[k], labels, kDotsPerMm));
    if (sheet.kind != SheetKind::Views) add(".dxf", to_dxf(sheet.pages[k], labels));
  }
}

/// Larger than every PDF reader has to accept: such a page comes as SVG and DXF, and in tiles.
bool too_large_for_pdf(const Sheet& sheet) {
  return std::ranges::any_of(sheet.pages, [](const Page& page) {
    return std::max(page.width_mm * page.print.x, page.height_mm * page.print.y) >
           kPaperSize.most.mm();
  });
}

}  // namespace

bool wants(Wanted wanted, SheetKind kind) {
  switch (wanted) {
    case Wanted::Everything:
      return true;
    case Wanted::Patterns:
      return kind == SheetKind::Pattern || kind == SheetKind::Tiles || kind == SheetKind::Fold ||
             kind == SheetKind::TapeMeasure || kind == SheetKind::Templates ||
             kind == SheetKind::Model;
    case Wanted::Views:
      return kind == SheetKind::Views;
    case Wanted::Numerals:
      break;
  }
  return kind == SheetKind::Numerals;
}

std::vector<Entry> entries_of(const Made& made, const Sheets& sheets, Wanted wanted,
                              const std::string& created) {
  const PdfOptions options{created};
  std::vector<Entry> entries;
  for (const Sheet& sheet : sheets.list) {
    if (!wants(wanted, sheet.kind)) continue;
    if (!too_large_for_pdf(sheet))
      entries.push_back({{sheet.stem + ".pdf", to_pdf(sheet, sheets.labels, options)},
                         std::to_string(sheet.pages.size()),
                         sheet.paper,
                         sheet.title});
    if (sheet.kind == SheetKind::Pattern || sheet.kind == SheetKind::Numerals ||
        sheet.kind == SheetKind::Views)
      add_pictures(entries, sheet, sheets.labels, wanted);
  }
  if (wanted != Wanted::Everything) return entries;
  for (std::size_t b = 0; b < made.wraps.size(); ++b) {
    const Mesh mesh = make_mesh(made.wraps[b], made.job.cloth);
    entries.push_back(
        {{stem_of(made, b, "cover") + ".obj", to_obj(mesh)}, "", "", "the cover as a 3-D model"});
  }
  entries.push_back(
      {{"report.json", report_json(made, sheets.list)}, "", "", "the report, for programs"});
  return entries;
}

std::string files_text(const std::string& folder, const std::vector<Entry>& entries) {
  Table table(
      {{"file"}, {"pages", Column::Align::Right}, {"paper"}, {"what", Column::Align::Left, true}});
  for (const Entry& entry : entries)
    table.add({escaped((std::filesystem::path(folder) / entry.file.name).string()), entry.pages,
               entry.paper, printable(entry.what)});
  return table.to_text();
}

std::string left_out_text(const Sheets& sheets, Wanted wanted) {
  std::string text;
  for (const Sheet& sheet : sheets.list)
    if (wants(wanted, sheet.kind) && too_large_for_pdf(sheet))
      text +=
          fmt::format("{}.pdf is left out: a page of a PDF is at most 200 in long.\n", sheet.stem);
  return text;
}

}  // namespace swathe::app
