#include "sheet/stroke_page.hpp"

#include <algorithm>

#include "numeral/method.hpp"
#include "sheet/stroke_picture.hpp"
#include "sheet/texts.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kMostScale = 0.6;
constexpr double kBetween = 12.0;  ///< digits; their figures stand below them
constexpr double kLeastBetween = 3.0;
constexpr double kGap = 8.0;
constexpr double kLine = 4.5;

/// The stroke the season asks for; where it asks for none, what most of the number has.
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

/// A digit, and what is told below it.
struct Column {
  const Digit* digit;
  std::vector<std::string> figures;
  double worded = 0;  ///< width of the figures
};

std::vector<Column> columns_of(const Made& made, double asked, const Font& labels) {
  std::vector<Column> columns;
  for (const Digit& digit : made.numerals->digits) {
    Column column{&digit, figures_of(digit, asked, made.job.units), 0};
    for (const std::string& line : column.figures)
      column.worded = std::max(column.worded, labels.text_width_mm(line, kTableHeight));
    columns.push_back(std::move(column));
  }
  return columns;
}

/// From column to column: less where their figures would not fit a width else.
double space_between(const std::vector<Column>& columns, double width) {
  double left = width;
  for (const Column& column : columns) left -= column.worded;
  const double even = left / static_cast<double>(std::max<std::size_t>(1, columns.size() - 1));
  return std::clamp(even, kLeastBetween, kBetween);
}

/// The scale at which the columns fill a width, each as wide as its digit or its figures; none
/// where these alone fill it.
double filling_scale(const std::vector<Column>& columns, double width) {
  double scale = 1e300;
  for (bool again = true; again;) {
    again = false;
    double left = width, wide = 0;
    for (const Column& column : columns)
      if (scale * column.digit->width < column.worded)
        left -= column.worded;
      else
        wide += column.digit->width;
    if (wide == 0) return scale;
    const double next = std::max(0.0, left / wide);
    again = next < scale;
    scale = std::min(scale, next);
  }
  return scale;
}

}  // namespace

Page stroke_page(const Made& made, const PaperKeys& paper, const Font& labels, const PageHead& head,
                 PageFill fill) {
  Page page = empty_page(paper, false);
  page.name = head.title.subject;
  if (fill == PageFill::Blank) return page;
  const Numerals& numerals = *made.numerals;
  const double asked = asked_stroke(made);
  Box room = draw_page_head(page.drawing, labels, printable(page, paper), head);

  const Box heading = draw_text_block(page.drawing, labels, {room.lo.x, room.hi.y}, room.width(),
                                      say("stroke.heading"), kTitleHeight);
  const Box key = draw_shade_key(page.drawing, labels, {room.lo.x, heading.lo.y - kGap},
                                 room.width(), asked, made.job.units);
  const std::vector<Column> columns = columns_of(made, asked, labels);
  double high = 0;
  for (const Digit& digit : numerals.digits) high = std::max(high, bounds(digit.outline).height());
  const double between = space_between(columns, room.width());
  const double gaps = between * static_cast<double>(columns.size() - 1);
  const double below = 4 * kLine + kGap;
  const double scale =
      std::max(0.05, std::min({kMostScale, filling_scale(columns, room.width() - gaps),
                               (key.lo.y - kGap - below - room.lo.y) / high}));
  FlatPoint at{room.lo.x, key.lo.y - kGap - scale * high};
  for (const Column& column : columns) {
    const Digit& digit = *column.digit;
    const Showing shown(page.drawing, Subject::digit(digit.digit));
    const Box ink = bounds(digit.outline);
    draw_shaded(page.drawing, {digit.outline, digit.stroke}, asked,
                at - scale * FlatPoint{ink.lo.x, ink.lo.y}, scale);
    double base = at.y - kGap;
    for (const std::string& line : column.figures) {
      page.drawing.text({at.x, base}, line, kTableHeight);
      base -= kLine;
    }
    at.x += std::max(scale * digit.width, column.worded) + between;
  }
  return page;
}

}  // namespace swathe
