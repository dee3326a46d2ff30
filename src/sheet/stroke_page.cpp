#include "sheet/stroke_page.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "numeral/method.hpp"
#include "sheet/stroke_picture.hpp"
#include "sheet/texts.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kMostScale = 0.6, kLeastScale = 0.05, kSmaller = 0.95;
constexpr double kBetween = 8.0;  ///< digits, and what stands below them
constexpr double kGap = 8.0;
constexpr double kLine = 4.5;
constexpr double kBelow = kGap + 4 * kLine;  ///< room for a digit's figures

/// The stroke the season asks for; where it asks for none, the narrowest digit's median.
double asked_stroke(const Made& made) {
  if (made.season && made.season->numerals_stroke) return made.season->numerals_stroke->value.mm();
  double least = 1e300;
  for (const Digit& digit : made.numerals->digits) least = std::min(least, digit.stroke.median());
  return least;
}

std::vector<std::string> figures_of(const Digit& digit, double asked, Units units) {
  std::vector<std::string> lines = {
      say("stroke.median", {{"width", measured(mm(digit.stroke.median()), units)}}),
      say("stroke.least", {{"width", measured(mm(digit.stroke.least()), units)}}),
      say("stroke.wide-enough",
          {{"share", plain_number(100 * digit.stroke.share_at_least(asked), 0)}})};
  if (!digit.bridges.empty()) {
    lines.push_back(
        say("stroke.with-bridges",
            {{"share", plain_number(100 * digit.stroke_after_bridges.share_at_least(asked), 0)}}));
  }
  return lines;
}

/// A digit with its figures, which stand below it.
struct Cell {
  const Digit* digit;
  std::vector<std::string> figures;
  double words;  ///< width of the widest
};

/// The lower left corner of each digit at that scale, in rows from the room's top.
std::vector<FlatPoint> in_rows(const std::vector<Cell>& cells, double high, double scale,
                               const plane::Box& room) {
  std::vector<FlatPoint> places;
  FlatPoint at{room.lo.x, room.hi.y - scale * high};
  for (const Cell& cell : cells) {
    const double wide = std::max(scale * cell.digit->width, cell.words);
    if (at.x > room.lo.x && at.x + wide > room.hi.x) at = {room.lo.x, at.y - kBelow - scale * high};
    places.push_back(at);
    at.x += wide + kBetween;
  }
  return places;
}

}  // namespace

Page stroke_page(const Made& made, const PaperKeys& paper, const Font& labels, const PageHead& head,
                 PageFill fill) {
  Page page = empty_page(paper, false);
  page.name = head.title.subject;
  if (fill == PageFill::Blank) return page;
  const Numerals& numerals = *made.numerals;
  const double asked = asked_stroke(made);
  plane::Box room = draw_page_head(page.drawing, labels, printable(page, paper), head);

  const plane::Box heading = draw_text_block(page.drawing, labels, {room.lo.x, room.hi.y},
                                             room.width(), say("stroke.heading"), kTitleHeight);
  const plane::Box key = draw_shade_key(page.drawing, labels, {room.lo.x, heading.lo.y - kGap},
                                        room.width(), asked, made.job.units);
  std::vector<Cell> cells;
  double high = 0;
  for (const Digit& digit : numerals.digits) {
    Cell cell{&digit, figures_of(digit, asked, made.job.units), 0};
    for (const std::string& line : cell.figures)
      cell.words = std::max(cell.words, labels.text_width_mm(line, kTableHeight));
    cells.push_back(std::move(cell));
    high = std::max(high, bounds(digit.outline).height());
  }
  const plane::Box rest{room.lo, {room.hi.x, key.lo.y - kGap}};
  double scale = kMostScale;
  std::vector<FlatPoint> places = in_rows(cells, high, scale, rest);
  while (places.back().y - kBelow < rest.lo.y && scale > kLeastScale) {
    scale *= kSmaller;
    places = in_rows(cells, high, scale, rest);
  }
  for (std::size_t k = 0; k < cells.size(); ++k) {
    const Digit& digit = *cells[k].digit;
    const Showing shown(page.drawing, Subject::digit(digit.digit));
    draw_shaded(page.drawing, {digit.outline, digit.stroke}, asked,
                places[k] - scale * bounds(digit.outline).lo, scale);
    double base = places[k].y - kGap;
    for (const std::string& line : cells[k].figures) {
      page.drawing.text({places[k].x, base}, line, kTableHeight);
      base -= kLine;
    }
  }
  return page;
}

}  // namespace swathe
