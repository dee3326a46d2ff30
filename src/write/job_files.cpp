#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "sheet/file_names.hpp"
#include "swathe/pattern.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

constexpr double kDotsPerMm = 4.0;  ///< of pictures that are looked at: about 100 an inch

/// Whether a sheet's pages are also files of their own.
bool is_pictured(SheetKind kind) {
  return kind == SheetKind::Pattern || kind == SheetKind::Numerals || kind == SheetKind::Views;
}

}  // namespace

bool wants(Wanted wanted, SheetKind kind) {
  switch (wanted) {
    case Wanted::Everything:
      return true;
    case Wanted::Patterns:
      return kind == SheetKind::TestPage || kind == SheetKind::Pattern ||
             kind == SheetKind::Tiles || kind == SheetKind::Fold || kind == SheetKind::Measures ||
             kind == SheetKind::Templates || kind == SheetKind::Model;
    case Wanted::Views:
      return kind == SheetKind::Views;
    case Wanted::Numerals:
      break;
  }
  return kind == SheetKind::TestPage || kind == SheetKind::Numerals || kind == SheetKind::Placing;
}

JobFiles::JobFiles(const Made& made, const Font& labels, FileOptions options)
    : made_(made), labels_(labels), options_(std::move(options)), list_(list_sheets(made, labels)) {
  const auto unwanted = [&](const SheetName& sheet) { return !wants(options_.wanted, sheet.kind); };
  std::erase_if(list_, unwanted);
  std::erase_if(options_.models, unwanted);
  // A test page alone would test for nothing.
  if (std::ranges::all_of(list_, [](const SheetName& s) { return s.kind == SheetKind::TestPage; }))
    list_.clear();
}

bool JobFiles::none() const {
  return list_.empty() && options_.models.empty() && options_.wanted != Wanted::Everything;
}

std::optional<MadeFile> JobFiles::next() {
  while (parts_.empty() && draw_next()) plan_parts();
  if (parts_.empty()) return next_beside_sheets();
  const Part part = parts_.front();
  parts_.pop_front();
  return made_part(part);
}

/// The next sheet takes the last one's place; false after the last.
bool JobFiles::draw_next() {
  sheet_ = {};
  if (listed_ < list_.size())
    sheet_ = make_sheet(made_, list_[listed_++], labels_);
  else if (models_ < options_.models.size())
    sheet_ = std::move(options_.models[models_++]);
  else
    return false;
  told_.push_back(told(sheet_));
  return true;
}

/// As dots what is looked at comes only where it is asked for alone: squeezing dots takes longer
/// than all the rest of it.
void JobFiles::plan_parts() {
  if (!told_.back().too_large_for_pdf) parts_.push_back({Format::Pdf, 0});
  if (!is_pictured(sheet_.kind)) return;
  for (std::size_t page = 0; page < sheet_.pages.size(); ++page) {
    parts_.push_back({Format::Svg, page});
    if (options_.wanted == Wanted::Views) parts_.push_back({Format::Png, page});
    if (sheet_.kind != SheetKind::Views) parts_.push_back({Format::Dxf, page});
  }
}

MadeFile JobFiles::made_part(Part part) const {
  if (part.format == Format::Pdf)
    return {sheet_.stem + ".pdf", to_pdf(sheet_, labels_, PdfOptions{options_.created}),
            sheet_.pages.size(), sheet_.paper, sheet_.title};
  const Page& page = sheet_.pages[part.page];
  const std::string stem =
      sheet_.stem + (sheet_.pages.size() == 1 ? "" : fmt::format("-{}", part.page + 1));
  const auto file = [&](const char* ending, std::string bytes) {
    return MadeFile{stem + ending, std::move(bytes), 1, "full size", sheet_.title};
  };
  if (part.format == Format::Svg) return file(".svg", to_svg(page, sheet_.title, labels_));
  if (part.format == Format::Png) return file(".png", to_png(page, labels_, kDotsPerMm));
  return file(".dxf", to_dxf(page, labels_));
}

std::optional<MadeFile> JobFiles::next_beside_sheets() {
  if (options_.wanted != Wanted::Everything) return {};
  if (meshes_ < made_.wraps.size()) {
    const std::size_t bumper = meshes_++;
    return MadeFile{stem_of(made_, bumper, "cover") + ".obj",
                    to_obj(make_mesh(made_.wraps[bumper], made_.job.cloth)), 0, "",
                    "the cover in space, for 3-D programs"};
  }
  if (std::exchange(reported_, true)) return {};
  return MadeFile{"report.json", report_json(made_, told_), 0, "", "the report, for programs"};
}

}  // namespace swathe
