#include "swathe/sheet/tape_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/ordinates.hpp"
#include "sheet/page_head.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/pattern_marks.hpp"
#include "sheet/running.hpp"
#include "sheet/same_words.hpp"
#include "sheet/small_pattern.hpp"
#include "swathe/sheet/stems.hpp"

namespace swathe {
namespace {

constexpr double kFigures = 34.0;  ///< room for a row of figures beside the small drawing
constexpr double kColumnGap = 8.0;
constexpr std::size_t kMostPages = 40;  ///< paper too small for a row would never end
constexpr double kLeastTable = 20.0;    ///< height below which a table waits for the next page

std::vector<Ordinate> ordinates_of(const std::vector<Running>& list, bool cut, double scale,
                                   double datum, Units units) {
  std::vector<Ordinate> ordinates;
  for (const Running& running : list)
    if (running.cut == cut)
      ordinates.push_back({datum + scale * running.at_mm, dimension(mm(running.at_mm), units)});
  return ordinates;
}

/// Lettering that lets so many figures stand side by side.
double figure_height(std::size_t figures, double room) {
  return 1.55 * kTextHeight * static_cast<double>(figures) <= room ? kTextHeight : kTableHeight;
}

/// The small drawing with its figures; what is left of the room below it.
Box draw_layout(Drawing& onto, const Face& labels, const Box& room, const Made& made,
                std::size_t bumper, const RunningDimensions& figures) {
  const Units units = made.job.units;
  const Pattern& pattern = made.patterns[bumper];
  const double width = room.width() - 2 * kFigures;
  const double height =
      std::min(width * pattern.cloth_width / pattern.cloth_length, room.height() - 2 * kFigures);
  const double middle = room.hi.y - kFigures - 0.5 * height;
  const SmallPattern small = small_pattern(made, bumper,
                                           {{room.lo.x + kFigures, middle - 0.5 * height},
                                            {room.hi.x - kFigures, middle + 0.5 * height}});
  onto.add(small.drawing, {});

  const Box& cloth = small.cloth;
  onto.line(LineKind::Thin, rectangle(cloth.lo, cloth.hi));  // the cloth before it is cut
  Box taken = cloth;
  for (const bool cut : {true, false}) {
    auto along = ordinates_of(figures.along, cut, small.scale, cloth.lo.x, units);
    auto across = ordinates_of(figures.across, cut, small.scale, cloth.lo.y, units);
    const double along_text = figure_height(along.size(), cloth.width());
    taken.cover(draw_ordinates(onto, labels, std::move(along),
                               cut ? OrdinateEdge::Above : OrdinateEdge::Below,
                               cut ? cloth.hi.y : cloth.lo.y, cloth.lo.x, cloth.hi.x, along_text));
    const double across_text = figure_height(across.size(), cloth.height() + kFigures);
    taken.cover(draw_ordinates(onto, labels, std::move(across),
                               cut ? OrdinateEdge::Left : OrdinateEdge::Right,
                               cut ? cloth.lo.x : cloth.hi.x, cloth.lo.y - 0.5 * kFigures,
                               cloth.hi.y + 0.5 * kFigures, across_text));
  }
  return {room.lo, {room.hi.x, taken.lo.y - kColumnGap}};
}

Table table_of(const std::vector<Running>& list, const char* heading, Units units) {
  Table table;
  table.columns = {{heading, Anchor::Right}, {"more or less", Anchor::Left}, {"what"}};
  for (const Running& running : list)
    table.rows.push_back(
        {dimension(mm(running.at_mm), units), left_over(mm(running.at_mm), units), running.what});
  return table;
}

Table table_of(const std::vector<RunningPoint>& points, Units units) {
  Table table;
  table.columns = {{"along", Anchor::Right}, {"across", Anchor::Right}, {"what"}};
  for (const RunningPoint& point : points)
    table.rows.push_back(
        {dimension(mm(point.along_mm), units), dimension(mm(point.across_mm), units), point.what});
  return table;
}

}  // namespace

Sheet tape_sheet(const Made& made, std::size_t bumper, const Face& labels) {
  const Units units = made.job.units;
  const Pattern& pattern = made.patterns[bumper];
  const RunningDimensions figures = running_dimensions(made, bumper);
  const bool inches = units == Units::Inches;

  PageHead head;
  head.title = {
      made.job.title,
      fmt::format("bumper {}, tape-measure layout", pattern.bumper),
      "",
      {fmt::format("{}, TOP away from you; {}", face_words(made), cut_words(made)),
       fmt::format("All figures in {}, from the cloth's left end (near) and bottom edge",
                   inches ? "inches" : "mm"),
       fmt::format("Cut a piece {} by {} first, hook the tape once, mark every figure off it",
                   dimension(mm(pattern.cloth_length), units),
                   dimension(mm(pattern.cloth_width), units)),
       made.job.cloth.relief == Relief::Sewn && !pattern.corners.empty()
           ? "Above and left: scissors. Below and right: pencil. Curved cuts: from the templates"
           : "Above and left: for the scissors. Below and right: for the pencil",
       same_words(made, bumper)}};

  std::vector<Table> tables = {table_of(figures.along, "along", units),
                               table_of(figures.across, "across", units)};
  if (!figures.points.empty()) tables.push_back(table_of(figures.points, units));

  Sheet sheet;
  sheet.stem = stem_of(made, bumper, "tape");
  sheet.title = head.title.subject;
  sheet.kind = SheetKind::TapeMeasure;
  sheet.paper = made.job.paper.sheet;
  const auto compose = [&](std::size_t of) {
    std::vector<Page> pages;
    std::size_t table = 0, row = 0;
    while (pages.empty() || (table < tables.size() && pages.size() < kMostPages)) {
      Page page = empty_page(made.job.paper, true);
      page.name = head.title.subject;
      PageHead own = head;
      own.title.sheet = of_pages(pages.size() + 1, of);
      if (!pages.empty()) own.title.lines.resize(1);
      const Box room = draw_page_head(page.drawing, labels, printable(page, made.job.paper), own);
      Box left = room;
      if (pages.empty()) left = draw_layout(page.drawing, labels, room, made, bumper, figures);
      // Down a column, then into the next; what would run off the page waits for the next.
      double x = left.lo.x, y = left.hi.y, right = x;
      while (table < tables.size() && left.height() >= kLeastTable) {
        Drawing trial;
        const TableDrawn tried =
            draw_table(trial, labels, {x, y}, tables[table], y - left.lo.y, row);
        const bool beside = x > left.lo.x, below = y < left.hi.y;
        if ((beside && tried.box.hi.x > left.hi.x) || (beside && !below && tried.next == row))
          break;
        if (below && tried.next == row) {
          x = right + kColumnGap;
          y = left.hi.y;
          continue;
        }
        page.drawing.add(trial, {});
        right = std::max(right, tried.box.hi.x);
        row = std::max(tried.next, row + 1);
        if (row >= tables[table].rows.size()) {
          ++table;
          row = 0;
          y = tried.box.lo.y - kColumnGap;
        }
        if (row > 0 || y - left.lo.y < kLeastTable) {
          x = right + kColumnGap;
          y = left.hi.y;
        }
      }
      pages.push_back(std::move(page));
    }
    return pages;
  };
  sheet.pages = compose(2);
  sheet.pages = compose(sheet.pages.size());
  return sheet;
}

}  // namespace swathe
