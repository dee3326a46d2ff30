#include <algorithm>
#include <utility>

#include "job/names.hpp"
#include "sheet/fold_sheet.hpp"
#include "sheet/measuring_sheet.hpp"
#include "sheet/numeral_sheets.hpp"
#include "sheet/papers.hpp"
#include "sheet/pattern_sheet.hpp"
#include "sheet/placing_sheet.hpp"
#include "sheet/same_cover_words.hpp"
#include "sheet/template_sheets.hpp"
#include "sheet/test_page.hpp"
#include "sheet/texts.hpp"
#include "sheet/view_sheet.hpp"
#include "swathe/sheet.hpp"
#include "tile/correction.hpp"

namespace swathe {
namespace {

using sheet_texts::listed;
using sheet_texts::say;

class Ways {
 public:
  Ways(const Made& made, const Font& labels)
      : made_(made), labels_(labels), on_(papers_of(made.job)) {}

  PrintWays all() const {
    constexpr PageFill kBlank = PageFill::Blank;
    PrintWays ways;
    add(ways.first, test_page(made_, on_.own, labels_, kBlank), {});
    for (std::size_t b = 0; b < made_.patterns.size(); ++b)
      if (is_cut_from_another(made_, b))
        ways.shared.push_back({b, static_cast<std::size_t>(made_.same[b]->other)});
    for (const auto kind : {PrintWay::Kind::Measures, PrintWay::Kind::Fold, PrintWay::Kind::Tiles,
                            PrintWay::Kind::PrintShop})
      if (PrintWay way = way_of(kind); !way.files.empty()) ways.ways.push_back(std::move(way));
    add(ways.numerals, numeral_sheets(made_, on_.own, labels_, kBlank), {});
    add(ways.numerals, placing_sheet(made_, on_.own, labels_, kBlank), {});
    add(ways.to_look_at, view_sheet(made_, on_.office, labels_, kBlank), {});
    return ways;
  }

 private:
  PrintWay way_of(PrintWay::Kind kind) const {
    PrintWay way;
    way.kind = kind;
    for (std::size_t b = 0; b < made_.patterns.size(); ++b) {
      if (is_cut_from_another(made_, b)) continue;
      const std::size_t before = way.files.size();
      for (Sheet& sheet : sheets_of(kind, b)) add(way.files, std::move(sheet), b);
      if (way.files.size() == before) way.left_out.push_back(b);
    }
    return way;
  }

  std::vector<Sheet> sheets_of(PrintWay::Kind kind, std::size_t bumper) const {
    constexpr PageFill kBlank = PageFill::Blank;
    std::vector<Sheet> sheets;
    switch (kind) {
      case PrintWay::Kind::Measures:
        sheets.push_back(measuring_sheet(made_, bumper, on_.office, labels_));
        sheets.push_back(template_sheets(made_, bumper, on_.own, labels_, kBlank));
        break;
      case PrintWay::Kind::Fold:
        sheets.push_back(fold_sheet(made_, bumper, on_.own, labels_, kBlank));
        break;
      case PrintWay::Kind::Tiles:
        sheets.push_back(tiles_sheet(made_, bumper, on_.own, labels_, kBlank));
        break;
      case PrintWay::Kind::PrintShop:
        sheets.push_back(pattern_sheet(made_, bumper, labels_));
        break;
    }
    return sheets;
  }

  /// A sheet without pages is not there.
  void add(std::vector<PrintFile>& files, Sheet sheet, std::optional<std::size_t> bumper) const {
    if (sheet.pages.empty()) return;
    Page& page = sheet.pages.front();
    page.print = stretch_of(page, made_.job.paper);
    // What is too large for a PDF comes as a drawing.
    files.push_back({sheet.stem + (fits_in_pdf(page) ? ".pdf" : ".svg"), bumper, sheet.pages.size(),
                     std::move(sheet.paper), mm(page.width_mm * page.print.x),
                     mm(page.height_mm * page.print.y)});
  }

  const Made& made_;
  const Font& labels_;
  Papers on_;
};

std::string way_name(PrintWay::Kind kind) {
  switch (kind) {
    case PrintWay::Kind::Measures:
      return say("way.measures");
    case PrintWay::Kind::Fold:
      return say("way.fold");
    case PrintWay::Kind::Tiles:
      return say("way.tiles");
    case PrintWay::Kind::PrintShop:
      break;
  }
  return say("way.print-shop");
}

std::string size_words(Length width, Length height, Units units) {
  return say("way.size",
             {{"width", dimension(width, units)}, {"height", dimension_with_unit(height, units)}});
}

/// "8 sheets of letter", "2 pages off the roll", "1 page of 83 by 18 in".
std::string pages_words(std::size_t pages, const PrintFile& like, Units units) {
  const std::string count = std::to_string(pages);
  if (like.paper == kRoll)
    return pages == 1 ? say("way.one-page-off-roll")
                      : say("way.pages-off-roll", {{"count", count}});
  const bool own = like.paper == kOwnSize || !find_paper(like.paper);
  const std::string paper = own ? size_words(like.width, like.height, units) : like.paper;
  if (like.paper == kOwnSize || !own)
    return pages == 1 ? say("way.one-sheet", {{"paper", paper}})
                      : say("way.sheets", {{"count", count}, {"paper", paper}});
  return pages == 1 ? say("way.one-page", {{"paper", paper}})
                    : say("way.pages", {{"count", count}, {"paper", paper}});
}

/// How many pages each cover takes; nothing where covers differ, or where there is one alone.
std::optional<std::size_t> pages_a_cover(const PrintWay& way) {
  std::vector<std::size_t> pages;
  std::optional<std::size_t> last;
  for (const PrintFile& file : way.files) {
    if (file.bumper != last) pages.push_back(0);
    last = file.bumper;
    pages.back() += file.pages;
  }
  const bool alike = std::ranges::all_of(pages, [&](std::size_t n) { return n == pages.front(); });
  if (pages.size() < 2 || !alike) return {};
  return pages.front();
}

/// Of pages as large as their covers: how many, and what the print shop must have room for.
std::string shop_words(const std::vector<PrintFile>& files, Units units) {
  PrintFile largest = files.front();
  std::size_t pages = 0;
  for (const PrintFile& file : files) {
    pages += file.pages;
    largest.width = std::max(largest.width, file.width);
    largest.height = std::max(largest.height, file.height);
  }
  if (pages == 1) return pages_words(1, largest, units);
  return say("way.pages-up-to", {{"count", std::to_string(pages)},
                                 {"paper", size_words(largest.width, largest.height, units)}});
}

}  // namespace

std::size_t PrintWay::pages() const {
  std::size_t sum = 0;
  for (const PrintFile& file : files) sum += file.pages;
  return sum;
}

PrintWays print_ways(const Made& made, const Font& labels) { return Ways(made, labels).all(); }

std::string sheets_words(const std::vector<PrintFile>& files, Units units) {
  std::string words;
  std::vector<std::string> told;
  for (const PrintFile& file : files) {
    // A word for one page tells papers apart: it has the paper's name, or its size.
    const std::string one = pages_words(1, file, units);
    if (std::ranges::count(told, one) > 0) continue;
    told.push_back(one);
    std::size_t pages = 0;
    for (const PrintFile& other : files)
      if (pages_words(1, other, units) == one) pages += other.pages;
    words += (words.empty() ? "" : ", ") + pages_words(pages, file, units);
  }
  return words;
}

std::string names_words(const std::vector<PrintFile>& files) {
  std::string words;
  for (const PrintFile& file : files) words += (words.empty() ? "" : ", ") + file.name;
  return words;
}

WayWords words_of(const PrintWay& way, const Made& made) {
  if (way.kind == PrintWay::Kind::PrintShop)
    return {way_name(way.kind), shop_words(way.files, made.job.units), names_words(way.files)};
  std::string sheets = sheets_words(way.files, made.job.units);
  if (const auto each = pages_a_cover(way))
    sheets = say("way.a-cover", {{"sheets", sheets}, {"each", std::to_string(*each)}});
  return {way_name(way.kind), std::move(sheets), names_words(way.files)};
}

std::vector<std::string> notes_of(const PrintWays& ways, const Made& made) {
  const auto name = [&](std::size_t bumper) { return made.patterns[bumper].bumper; };
  std::vector<std::string> notes;
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    std::vector<std::string> others;
    for (const SharedPrint& one : ways.shared)
      if (one.print == b) others.push_back(name(one.bumper));
    if (!others.empty())
      notes.push_back(say("way.shared", {{"bumpers", listed(others)}, {"bumper", name(b)}}));
  }
  for (const PrintWay& way : ways.ways) {
    std::vector<std::string> others;
    for (const std::size_t b : way.left_out) others.push_back(name(b));
    if (!others.empty())
      notes.push_back(
          say("way.left-out", {{"bumpers", listed(others)}, {"way", way_name(way.kind)}}));
  }
  return notes;
}

}  // namespace swathe
