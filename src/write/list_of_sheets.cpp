#include <algorithm>
#include <cassert>
#include <cstddef>
#include <utility>

#include "book/book_sheet.hpp"
#include "book/start_sheet.hpp"
#include "draw/page_fill.hpp"
#include "draw/text_box.hpp"
#include "sheet/fold_sheet.hpp"
#include "sheet/measuring_sheet.hpp"
#include "sheet/numeral_sheets.hpp"
#include "sheet/papers.hpp"
#include "sheet/pattern_sheet.hpp"
#include "sheet/placing_sheet.hpp"
#include "sheet/same_cover_words.hpp"
#include "sheet/template_sheets.hpp"
#include "sheet/test_page.hpp"
#include "sheet/view_sheet.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"
#include "tile/correction.hpp"

namespace swathe {
namespace {

/// A page off a roll, cut where what is on it ends.
void cut_to_length(Page& page, const Font& labels, double margin_mm) {
  double lowest = page.height_mm;
  for (const draw::Mark& mark : page.drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark))
      lowest = std::min(lowest, bounds(line->path).lo.y);
    if (const auto* const fill = std::get_if<FillMark>(&mark))
      for (const plane::Path& outline : fill->outlines)
        lowest = std::min(lowest, bounds(outline).lo.y);
    if (const auto* const text = std::get_if<TextMark>(&mark))
      for (const FlatPoint p : box_of(*text, labels).corners()) lowest = std::min(lowest, p.y);
  }
  const double off = std::max(0.0, lowest - margin_mm);
  Drawing moved;
  moved.add(page.drawing, {false, 0, {0, -off}});
  page.drawing = std::move(moved);
  page.height_mm -= off;
}

/// What cannot be measured without its drawing is drawn in any case.
Sheet composed(const Made& made, const ListedSheet& listed, const Papers& on, const Font& labels,
               const PrintWays& ways, PageFill fill) {
  const std::size_t bumper = listed.bumper.value_or(0);
  switch (listed.kind) {
    case SheetKind::Start:
      return start_sheet(made, ways, on.office, labels);
    case SheetKind::TestPage:
      return test_page(made, on.own, labels, fill);
    case SheetKind::Pattern:
      return pattern_sheet(made, bumper, labels);
    case SheetKind::Tiles:
      return tiles_sheet(made, bumper, on.own, labels, fill);
    case SheetKind::Fold:
      return fold_sheet(made, bumper, on.own, labels, fill);
    case SheetKind::Measures:
      return measuring_sheet(made, bumper, on.office, labels);
    case SheetKind::Templates:
      return template_sheets(made, bumper, on.own, labels, fill);
    case SheetKind::Numerals:
      return numeral_sheets(made, on.own, labels, fill);
    case SheetKind::Placing:
      return placing_sheet(made, on.own, labels, fill);
    case SheetKind::Views:
      return view_sheet(made, on.office, labels, fill);
    case SheetKind::Book:
      return book_sheet(made, ways, on.office, labels);
    case SheetKind::Model:
    case SheetKind::Lay:
      break;
  }
  assert(false && "no such sheet is listed");
  return {};
}

/// As it leaves for paper: a roll's pages cut to length, what is printed made up for.
Sheet finished(const Made& made, const ListedSheet& listed, const Font& labels,
               const PrintWays& ways, PageFill fill) {
  const Papers on = papers_of(made.job);
  const PaperKeys& paper = made.job.paper;
  const auto is_cut = [&](const Page& page) {
    return paper.sheet == kRoll && page.height_mm == on.own.height.mm();
  };
  Sheet sheet = composed(made, listed, on, labels, ways, fill);
  // Where a roll is cut shows only in what is drawn on it.
  if (fill == PageFill::Blank && std::ranges::any_of(sheet.pages, is_cut))
    sheet = composed(made, listed, on, labels, ways, PageFill::Drawn);
  for (Page& page : sheet.pages) {
    if (is_cut(page)) cut_to_length(page, labels, on.own.margin.mm());
    page.print = stretch_of(page, paper);
  }
  return sheet;
}

bool tells_ways(const SheetName& sheet) {
  return sheet.kind == SheetKind::Start || sheet.kind == SheetKind::Book;
}

/// The file that the ways to print have counted a sheet for; none of a sheet that is on no way.
const PrintFile* file_of(const PrintWays& ways, const SheetName& sheet) {
  const auto in = [&](const std::vector<PrintFile>& files) {
    const auto found = std::ranges::find_if(files, [&](const PrintFile& file) {
      return file.name.substr(0, file.name.rfind('.')) == sheet.stem;
    });
    return found == files.end() ? nullptr : &*found;
  };
  for (const PrintWay& way : ways.ways)
    if (const PrintFile* const file = in(way.files)) return file;
  for (const auto* files : {&ways.first, &ways.numerals, &ways.to_look_at})
    if (const PrintFile* const file = in(*files)) return file;
  return nullptr;
}

ToldSheet told(const PrintFile& file, const SheetName& sheet) {
  ToldSheet told{sheet, file.pages, file.name.ends_with(".svg")};
  told.paper = file.paper;
  return told;
}

}  // namespace

std::vector<ListedSheet> list_sheets(const Made& made, const Font& labels) {
  const Papers on = papers_of(made.job);
  std::vector<ListedSheet> list;
  const auto add = [&](std::optional<SheetName> name, std::optional<std::size_t> bumper) {
    if (name) list.push_back({std::move(*name), bumper});
  };
  add(start_name(on.office), {});
  add(test_page_name(on.own), {});
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    const bool own_print = !is_cut_from_another(made, b);
    add(pattern_name(made, b), b);
    if (own_print) add(tiles_name(made, b, on.own), b);
    if (own_print) add(fold_name(made, b, on.own), b);
    add(measuring_name(made, b, on.office), b);
    if (own_print) add(template_name(made, b, on.own, labels), b);
  }
  add(numeral_name(made, on.own), {});
  add(placing_name(made, on.own), {});
  add(view_name(made, on.office), {});
  add(book_name(on.office), {});
  return list;
}

Sheet make_sheet(const Made& made, const ListedSheet& listed, const Font& labels,
                 const PrintWays& ways) {
  return finished(made, listed, labels, ways, PageFill::Drawn);
}

Sheet make_sheet(const Made& made, const ListedSheet& listed, const Font& labels) {
  return make_sheet(made, listed, labels,
                    tells_ways(listed) ? print_ways(made, labels) : PrintWays());
}

std::vector<Sheet> all_sheets(const Made& made, const Font& labels) {
  const PrintWays ways = print_ways(made, labels);
  std::vector<Sheet> sheets;
  for (const ListedSheet& listed : list_sheets(made, labels))
    sheets.push_back(make_sheet(made, listed, labels, ways));
  return sheets;
}

ToldSheet told(const Sheet& sheet) {
  const bool too_large = !std::ranges::all_of(sheet.pages, fits_in_pdf);
  return {sheet, sheet.pages.size(), too_large};
}

std::vector<ToldSheet> told(const std::vector<Sheet>& sheets) {
  std::vector<ToldSheet> list;
  for (const Sheet& sheet : sheets) list.push_back(told(sheet));
  return list;
}

std::vector<ToldSheet> told_sheets(const Made& made, const Font& labels) {
  const PrintWays ways = print_ways(made, labels);
  const bool cut = made.job.paper.sheet == kRoll;  // where, shows only once a page is drawn
  std::vector<ToldSheet> sheets;
  for (const ListedSheet& listed : list_sheets(made, labels)) {
    const PrintFile* const file = cut ? nullptr : file_of(ways, listed);
    sheets.push_back(file ? told(*file, listed)
                          : told(finished(made, listed, labels, ways, PageFill::Blank)));
  }
  return sheets;
}

}  // namespace swathe
