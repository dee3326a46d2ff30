#include "swathe/write/sheets.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <utility>

#include "draw/text_box.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/same_words.hpp"
#include "swathe/book/book_sheet.hpp"
#include "swathe/job/papers.hpp"
#include "swathe/sheet/fold_sheet.hpp"
#include "swathe/sheet/numeral_sheets.hpp"
#include "swathe/sheet/pattern_sheet.hpp"
#include "swathe/sheet/stems.hpp"
#include "swathe/sheet/tape_sheet.hpp"
#include "swathe/sheet/template_sheets.hpp"
#include "swathe/sheet/view_sheet.hpp"
#include "tile/correction.hpp"
#include "tile/tile_on_paper.hpp"

namespace swathe {
namespace {

/// A page off a roll, cut where what is on it ends.
void cut_to_length(Page& page, const Font& labels, double margin_mm) {
  double lowest = page.height_mm;
  for (const Mark& mark : page.drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark))
      lowest = std::min(lowest, bounds(line->path).lo.y);
    if (const auto* const fill = std::get_if<FillMark>(&mark))
      for (const Path& outline : fill->outlines) lowest = std::min(lowest, bounds(outline).lo.y);
    if (const auto* const text = std::get_if<TextMark>(&mark))
      for (const FlatPoint p : box_of(*text, labels).corners()) lowest = std::min(lowest, p.y);
  }
  const double off = std::max(0.0, lowest - margin_mm);
  Drawing moved;
  moved.add(page.drawing, {false, 0, {0, -off}});
  page.drawing = std::move(moved);
  page.height_mm -= off;
}

/// What is read at the bench and not at full size needs no roll: it goes on an office's paper.
Made on_office_paper(const Made& made) {
  Made other = made;
  const Paper& office = office_paper(made.job.units);
  other.job.paper.sheet = office.name;
  other.job.paper.width = office.width;
  other.job.paper.height = office.height;
  return other;
}

std::vector<Sheet> composed(const Made& made, const Made& office, const Font& labels) {
  std::vector<Sheet> sheets;
  const auto add = [&](Sheet sheet) {
    if (!sheet.pages.empty()) sheets.push_back(std::move(sheet));
  };
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    add(pattern_sheet(made, b, labels));
    const bool own_print = !is_cut_from_another(made, b);
    if (own_print) {
      Sheet tiles = tile_on_paper(pattern_piece(made, b, labels), made.job.paper, labels,
                                  {stem_of(made, b, "tiles"), made.job.title, cut_words(made),
                                   face_words(made), same_words(made, b)});
      tiles.title = fmt::format("bumper {}, tiles", made.patterns[b].bumper);
      add(std::move(tiles));
      add(fold_sheet(made, b, labels));
    }
    add(tape_sheet(office, b, labels));
    if (own_print) add(template_sheets(made, b, labels));
  }
  if (made.numerals) add(numeral_sheets(made, labels));
  if (made.sight && !made.sight->scene.numbers.empty()) add(view_sheet(office, labels));
  add(book_sheet(office, labels));
  return sheets;
}

}  // namespace

std::vector<Sheet> all_sheets(const Made& made, const Font& labels) {
  const PaperKeys& paper = made.job.paper;
  const bool roll = paper.sheet == kRoll;
  if (!roll && !paper.measured) return composed(made, made, labels);
  Made before = made, office = roll ? on_office_paper(made) : made;
  for (Made* const one : {&before, &office}) one->job.paper = before_stretch(one->job.paper);
  std::vector<Sheet> sheets = composed(before, office, labels);
  for (Sheet& sheet : sheets)
    for (Page& page : sheet.pages) {
      if (roll && page.height_mm == before.job.paper.height.mm())
        cut_to_length(page, labels, before.job.paper.margin.mm());
      page.print = stretch_of(page, paper);
    }
  return sheets;
}

}  // namespace swathe
