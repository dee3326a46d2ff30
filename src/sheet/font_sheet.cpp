#include <algorithm>
#include <cassert>

#include "draw/page_head.hpp"
#include "sheet/stroke_picture.hpp"
#include "swathe/sheet.hpp"

namespace swathe {
namespace {

constexpr double kGap = 3.0;
constexpr double kMostScale = 0.22;
constexpr double kMostShare = 0.4;  ///< of the page's width that the numbers take
constexpr double kName = 4.0, kFigure = 2.5;

double highest(const FontSpecimen& font) { return font.line.ink.height(); }

/// Words beside a number, from the top of it down; how low they come.
double draw_words(Drawing& onto, const Font& labels, const FontSpecimen& font, FlatPoint top_left,
                  double width) {
  double y = draw_text_block(onto, labels, top_left, width, font.name, kName).lo.y - 1.0;
  for (const std::string& line : font.figures)
    y = draw_text_block(onto, labels, {top_left.x, y}, width, line, kFigure).lo.y - 0.8;
  return y;
}

void draw_number(Drawing& onto, const FontSpecimen& font, double asked, FlatPoint lower_left,
                 double scale) {
  const FlatPoint origin = lower_left - scale * font.line.ink.lo;
  for (const DigitLine::Place& place : font.line.places) {
    const auto shape = std::ranges::find(font.line.shapes, place.digit, &DigitOutline::digit);
    const auto number = static_cast<std::size_t>(shape - font.line.shapes.begin());
    draw_shaded(onto, {shape->outline, font.strokes[number]}, asked, origin + scale * place.origin,
                scale);
  }
}

}  // namespace

Sheet font_sheet(const std::vector<FontSpecimen>& fonts, const std::string& title,
                 const std::vector<std::string>& words, double asked, const PaperKeys& paper,
                 Units units, const Font& labels) {
  assert(!fonts.empty());
  Sheet sheet{{"fonts", title, SheetKind::Numerals, paper.sheet}, {}};
  plane::Box room;
  double y = 0;
  const auto turn = [&] {
    Page page = empty_page(paper, false);
    page.name = title;
    PageHead head;
    head.title = {title, "", "", sheet.pages.empty() ? words : std::vector<std::string>{}};
    room = draw_page_head(page.drawing, labels, printable(page, paper), head);
    y = draw_shade_key(page.drawing, labels, {room.lo.x, room.hi.y}, room.width(), asked, units)
            .lo.y -
        kGap;
    sheet.pages.push_back(std::move(page));
  };
  turn();
  double widest = 0;
  for (const FontSpecimen& font : fonts) widest = std::max(widest, font.line.ink.width());
  const double scale = std::min(kMostScale, kMostShare * room.width() / widest);
  const double beside = room.lo.x + scale * widest + kGap;
  for (const FontSpecimen& font : fonts) {
    const double high = scale * highest(font);
    Drawing trial;
    const auto draw = [&](Drawing& onto) {
      draw_number(onto, font, asked, {room.lo.x, y - high}, scale);
      return std::min(y - high, draw_words(onto, labels, font, {beside, y}, room.hi.x - beside));
    };
    double low = draw(trial);
    if (low < room.lo.y && y < room.hi.y - 2 * high) {
      turn();
      low = draw(sheet.pages.back().drawing);
    } else {
      sheet.pages.back().drawing.add(trial, {});
    }
    y = low - kGap;
  }
  return sheet;
}

}  // namespace swathe
