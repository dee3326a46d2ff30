#include "swathe/sheet/numeral_sheets.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <utility>

#include "sheet/page_head.hpp"
#include "sheet/pattern_marks.hpp"
#include "sheet/shelves.hpp"
#include "sheet/tile_on_paper.hpp"
#include "swathe/numeral/method.hpp"

namespace swathe {
namespace {

constexpr double kAround = 12.0;   ///< sheet left round a digit
constexpr double kRunOut = 9.0;    ///< base line past the ink
constexpr double kCaption = 10.0;  ///< height of the words under a digit
constexpr double kCaptionText = 5.0;
constexpr double kGap = 4.0;

/// How a method is told on its sheet.
struct MethodWords {
  const char* piece;  ///< the sheet's name
  const char* how;
  const char* times;                  ///< before "12 times"
  std::vector<const char*> cautions;  ///< by name
};

MethodWords words_of(NumeralMethod method) {
  switch (method) {
    case NumeralMethod::Stencil:
      return {
          "stencils", "cut out the grey, leave the bridges standing", "use", {"blade", "spray"}};
    case NumeralMethod::PaintMask:
      return {
          "paint masks", "cut out the grey, leave the bridges standing", "cut", {"blade", "spray"}};
    case NumeralMethod::IronOn:
      return {"iron-on numerals",
              "drawn mirrored: lay the film with its back up and cut",
              "cut",
              {"blade", "iron"}};
    case NumeralMethod::SewOn:
      return {"sew-on numerals",
              "cut outside, turn the edge under, sew on the dashes",
              "cut",
              {"blade", "iron"}};
  }
  return {};
}

/// A digit with what is written under it, lower left corner at the origin.
struct Cell {
  Drawing drawing;
  FlatPoint size;
};

void outline(Drawing& onto, LineKind kind, const Region& region) {
  for (const Polygon& contour : region) onto.line(kind, closed_path(contour));
}

Cell cell_of(const Digit& digit, NumeralMethod method, const MethodWords& words) {
  const DigitLines lines = digit_lines(digit, method);
  Box ink = bounds(lines.cut);
  ink.cover(bounds(digit.outline));
  const FlatPoint move = FlatPoint{kAround, kAround + kCaption} - ink.lo;
  Drawing digit_alone;
  std::vector<Path> grey;
  for (const Polygon& contour : lines.cut) grey.push_back(closed_path(contour));
  digit_alone.fill(LineKind::Cut, kTint, std::move(grey));
  outline(digit_alone, LineKind::Cut, lines.cut);
  outline(digit_alone, LineKind::Stitch, lines.stitch);
  // Only beside the digit: through it, it would look like a cut.
  for (const auto& [from, to] : {std::pair{ink.lo.x - kRunOut, ink.lo.x - 1.5},
                                 std::pair{ink.hi.x + 1.5, ink.hi.x + kRunOut}})
    digit_alone.line(LineKind::Numeral, {from, 0}, {to, 0});

  Cell cell;
  cell.size = {ink.width() + 2 * kAround, ink.height() + 2 * kAround + kCaption};
  cell.drawing.add(digit_alone, {false, 0, move});
  cell.drawing.line(LineKind::Thin, rectangle({0, 0}, cell.size));
  cell.drawing.text({0.5 * cell.size.x, 4.0},
                    fmt::format("{}: {} {} {}", digit.digit, words.times, digit.count,
                                digit.count == 1 ? "time" : "times"),
                    kCaptionText, Anchor::Middle);
  return cell;
}

std::string height_words(const Numerals& numerals, Units units) {
  double least = 1e300, most = 0;
  for (const Digit& digit : numerals.digits) {
    least = std::min(least, digit.height);
    most = std::max(most, digit.height);
  }
  const std::string high = dimension_with_unit(mm(most), units);
  if (dimension_with_unit(mm(least), units) == high) return fmt::format("digits {} high", high);
  return fmt::format("digits {} to {} high", dimension(mm(least), units), high);
}

/// Cells on paper held one way, and those that are larger than a page.
struct Laid {
  std::vector<Page> pages;
  std::vector<const Cell*> too_large;
};

Laid pages_of(const std::vector<Cell>& cells, const PaperKeys& paper, bool wide,
              const PageHead& head, const Face& labels) {
  PageHead later_head = head;
  later_head.cautions.clear();
  const auto page_with = [&](const PageHead& words, Box& room) {
    Page page = empty_page(paper, wide);
    page.name = words.title.subject;
    room = draw_page_head(page.drawing, labels, printable(page, paper), words);
    return page;
  };
  Box first, later;
  for (const auto& [words, room] : {std::pair{head, &first}, std::pair{later_head, &later}}) {
    PageHead measured = words;
    measured.title.sheet = of_pages(cells.size(), cells.size() + 1);  // a line of its own
    page_with(measured, *room);
  }
  Laid laid;
  std::vector<const Cell*> fitting;
  std::vector<FlatPoint> sizes;
  for (const Cell& cell : cells) {
    if (cell.size.x > later.width() || cell.size.y > later.height()) {
      laid.too_large.push_back(&cell);
      continue;
    }
    fitting.push_back(&cell);
    sizes.push_back(cell.size);
  }
  const std::vector<Shelved> places = shelve(sizes, first, later, kGap);
  const std::size_t of = places.empty() ? 0 : places.back().page + 1;
  for (std::size_t k = 0; k < of; ++k) {
    PageHead own = k == 0 ? head : later_head;
    own.title.sheet = of_pages(k + 1, of);
    Box room;
    laid.pages.push_back(page_with(own, room));
  }
  for (std::size_t k = 0; k < fitting.size(); ++k)
    laid.pages[places[k].page].drawing.add(fitting[k]->drawing, {false, 0, places[k].at});
  return laid;
}

}  // namespace

Sheet numeral_sheets(const Made& made, const Face& labels) {
  assert(made.numerals.has_value());
  const Numerals& numerals = *made.numerals;
  const NumeralMethod method = made.job.numerals.method;
  const MethodWords words = words_of(method);

  PageHead head;
  head.title = {made.job.title,
                fmt::format("numerals {}, {}", made.job.number, words.piece),
                "",
                {numerals.face, numerals.change, height_words(numerals, made.job.units), words.how,
                 kPrintWords}};
  head.scales = true;
  for (const char* name : words.cautions) head.cautions.push_back(caution(name));

  std::vector<Cell> cells;
  for (const Digit& digit : numerals.digits) cells.push_back(cell_of(digit, method, words));

  Sheet sheet;
  sheet.stem = "numerals";
  sheet.title = head.title.subject;
  sheet.kind = SheetKind::Numerals;
  sheet.paper = made.job.paper.sheet;
  Laid laid = pages_of(cells, made.job.paper, false, head, labels);
  Laid wide = pages_of(cells, made.job.paper, true, head, labels);
  const auto cost = [](const Laid& one) {
    return std::pair{one.too_large.size(), one.pages.size()};
  };
  if (cost(wide) < cost(laid)) laid = std::move(wide);
  sheet.pages = std::move(laid.pages);
  for (const Cell* cell : laid.too_large) {
    const Page page{cell->size.x, cell->size.y, cell->drawing, head.title.subject};
    Sheet tiles = tile_on_paper(page, made, labels, {sheet.stem, "", words.how, ""});
    for (Page& tile : tiles.pages) sheet.pages.push_back(std::move(tile));
  }
  return sheet;
}

}  // namespace swathe
