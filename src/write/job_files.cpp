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

std::string to_text(FileKind kind) {
  constexpr std::array<const char*, kFileKinds> kTexts = {
      "start",    "test-page", "pattern", "tiles", "measures", "templates",
      "numerals", "views",     "book",    "model", "mesh",     "report"};
  return kTexts[static_cast<std::size_t>(kind)];
}

FileKind file_kind(SheetKind kind) {
  switch (kind) {
    case SheetKind::Start:
      return FileKind::Start;
    case SheetKind::TestPage:
      return FileKind::TestPage;
    case SheetKind::Pattern:
      return FileKind::Pattern;
    case SheetKind::Tiles:
    case SheetKind::Fold:
      return FileKind::Tiles;
    case SheetKind::Measures:
      return FileKind::Measures;
    case SheetKind::Templates:
      return FileKind::Templates;
    case SheetKind::Model:
      return FileKind::Model;
    case SheetKind::Numerals:
    case SheetKind::Placing:
      return FileKind::Numerals;
    case SheetKind::Views:
      return FileKind::Views;
    case SheetKind::Book:
    case SheetKind::Lay:
      break;
  }
  return FileKind::Book;
}

std::optional<Wanted> Wanted::of_word(std::string_view word) {
  constexpr std::array<Wanted, kWantedWords.size()> kMeanings = {
      Wanted{FileKind::TestPage, FileKind::Pattern},
      Wanted{FileKind::TestPage, FileKind::Tiles},
      Wanted{FileKind::Measures},
      Wanted{FileKind::TestPage, FileKind::Templates},
      Numerals,
      Views,
      Wanted{FileKind::Book},
      Wanted{FileKind::Model, FileKind::Mesh}};
  const auto at = std::ranges::find(kWantedWords, word);
  if (at == kWantedWords.end()) return {};
  return kMeanings[static_cast<std::size_t>(at - kWantedWords.begin())];
}

bool wants(Wanted wanted, SheetKind kind) { return wanted.has(file_kind(kind)); }

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
  return list_.empty() && options_.models.empty() && !options_.wanted.has(FileKind::Mesh) &&
         !options_.wanted.has(FileKind::Report);
}

const PrintWays& JobFiles::ways() {
  if (!ways_) ways_ = print_ways(made_, labels_);
  return *ways_;
}

std::optional<MadeFile> JobFiles::next() {
  while (parts_.empty() && draw_next()) plan_parts();
  if (parts_.empty()) return next_beside_sheets();
  const Part part = parts_.front();
  parts_.pop_front();
  return made_part(part);
}

Sheet JobFiles::next_listed() {
  const ListedSheet& listed = list_[listed_++];
  const bool tells_ways = listed.kind == SheetKind::Start || listed.kind == SheetKind::Book;
  return make_sheet(made_, listed, labels_, tells_ways ? ways() : PrintWays());
}

/// The next sheet takes the last one's place; false after the last.
bool JobFiles::draw_next() {
  sheet_ = {};
  if (listed_ < list_.size())
    sheet_ = next_listed();
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
            sheet_.pages.size(),  sheet_.paper,
            sheet_.title,         file_kind(sheet_.kind)};
  const Page& page = sheet_.pages[part.page];
  const std::string stem =
      sheet_.stem + (sheet_.pages.size() == 1 ? "" : fmt::format("-{}", part.page + 1));
  const auto file = [&](const char* ending, std::string bytes) {
    return MadeFile{stem + ending, std::move(bytes), 1,
                    "full size",   sheet_.title,     file_kind(sheet_.kind)};
  };
  if (part.format == Format::Svg) return file(".svg", to_svg(page, sheet_.title, labels_));
  if (part.format == Format::Png) return file(".png", to_png(page, labels_, kDotsPerMm));
  return file(".dxf", to_dxf(page, labels_));
}

std::optional<MadeFile> JobFiles::next_beside_sheets() {
  if (options_.wanted.has(FileKind::Mesh) && meshes_ < made_.wraps.size()) {
    const std::size_t bumper = meshes_++;
    return MadeFile{stem_of(made_, bumper, "cover") + ".obj",
                    to_obj(make_mesh(made_.wraps[bumper], made_.job.cloth)),
                    0,
                    "",
                    "the cover in space, for 3-D programs",
                    FileKind::Mesh};
  }
  if (!options_.wanted.has(FileKind::Report) || std::exchange(reported_, true)) return {};
  return MadeFile{"report.json",   report_json(made_, told_), 0, "", "the report, for programs",
                  FileKind::Report};
}

}  // namespace swathe
