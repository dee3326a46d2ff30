#include "sheet/measuring_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "draw/marks.hpp"
#include "draw/ordinates.hpp"
#include "draw/page_head.hpp"
#include "sheet/cover_ends.hpp"
#include "sheet/cover_ordinates.hpp"
#include "sheet/file_names.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/same_cover_words.hpp"
#include "sheet/small_pattern.hpp"
#include "sheet/texts.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

/// Lettering of the small drawing's figures, and the room that a row of them takes beside it.
struct Figures {
  double height, room;
};
constexpr Figures kLarge = {kTextHeight, 29.0}, kSmall = {kTableHeight, 23.0};
constexpr double kColumnGap = 5.0;
constexpr std::size_t kMostPages = 40;  ///< on paper too small for a row it would never end
constexpr double kLeastTable = 20.0;    ///< height below which a table waits for the next column

std::vector<Ordinate> ordinates_of(const std::vector<Running>& list, bool cut, double scale,
                                   double datum, Units units) {
  std::vector<Ordinate> ordinates;
  for (const Running& running : list)
    if (running.cut == cut)
      ordinates.push_back({datum + scale * running.at_mm, dimension(mm(running.at_mm), units)});
  return ordinates;
}

/// The height of lettering at which so many figures fit side by side.
double figure_height(std::size_t figures, double room, const Figures& lettering) {
  return kFigurePitch * lettering.height * static_cast<double>(figures) <= room ? lettering.height
                                                                                : kTableHeight;
}

/// The small drawing with its figures; what is left of the room below it.
plane::Box draw_layout(Drawing& onto, const Font& labels, const plane::Box& room, const Made& made,
                       std::size_t bumper, const RunningDimensions& figures,
                       const Figures& lettering) {
  const Units units = made.job.units;
  const Pattern& pattern = made.patterns[bumper];
  const double width = room.width() - 2 * lettering.room;
  const double height = std::min(width * pattern.cloth_width / pattern.cloth_length,
                                 room.height() - 2 * lettering.room);
  const double middle = room.hi.y - lettering.room - 0.5 * height;
  const SmallPattern small = small_pattern(made, bumper,
                                           {{room.lo.x + lettering.room, middle - 0.5 * height},
                                            {room.hi.x - lettering.room, middle + 0.5 * height}});
  Drawing layout;
  layout.add(small.drawing, {});

  const plane::Box& cloth = small.cloth;
  layout.line(LineKind::Thin, rectangle(cloth.lo, cloth.hi));  // the cloth before it is cut
  plane::Box taken = cloth;
  for (const bool cut : {true, false}) {
    auto along = ordinates_of(figures.along, cut, small.scale, cloth.lo.x, units);
    auto across = ordinates_of(figures.across, cut, small.scale, cloth.lo.y, units);
    const double along_text = figure_height(along.size(), cloth.width(), lettering);
    taken.cover(draw_ordinates(layout, labels, std::move(along),
                               cut ? OrdinateEdge::Above : OrdinateEdge::Below,
                               cut ? cloth.hi.y : cloth.lo.y, cloth.lo.x, cloth.hi.x, along_text));
    // Beside a narrow strip the row of figures is longer than the strip and reaches past its ends.
    const double across_text =
        figure_height(across.size(), cloth.height() + lettering.room, lettering);
    const double least = kFigurePitch * across_text * static_cast<double>(across.size());
    const double half = 0.5 * std::max(cloth.height() + lettering.room, least);
    taken.cover(draw_ordinates(layout, labels, std::move(across),
                               cut ? OrdinateEdge::Left : OrdinateEdge::Right,
                               cut ? cloth.lo.x : cloth.hi.x, cloth.middle().y - half,
                               cloth.middle().y + half, across_text));
  }
  // Very many figures across reach above the room: all of it goes down so far.
  const double down = std::max(0.0, taken.hi.y - room.hi.y);
  onto.add(layout, {false, 0, {0, -down}});
  return {room.lo, {room.hi.x, taken.lo.y - down - kColumnGap}};
}

/// A way to lay out the page.
struct Way {
  bool wide;      ///< the longer way across
  double tables;  ///< that stand side by side
  Figures figures;
  bool close;  ///< the tables' rows
};
/// The best to read first.
constexpr Way kWays[] = {
    {true, 3, kLarge, false}, {false, 2, kSmall, false}, {false, 2, kSmall, true}};

Table table_of(const std::vector<Running>& list, const char* heading, Units units,
               const Font& labels, double width, bool close) {
  Table table;
  table.close = close;
  table.columns = {{say(heading), draw::Anchor::Right}, {say("measures.column-what")}};
  for (const Running& running : by_figure(list, units))
    table.rows.push_back({dimension(mm(running.at_mm), units), running.what});
  table.columns.back().width_mm = width - natural_width(table, 0, labels);
  return table;
}

/// Tables set down a column, then down the next, then on the next page.
class Columns {
 public:
  Columns(const Font& labels, std::vector<Table> tables)
      : labels_(labels), tables_(std::move(tables)) {}

  bool done() const { return table_ == tables_.size(); }

  /// As many rows as go into the room.
  void fill(Drawing& onto, const plane::Box& room, double pitch) {
    const int columns = static_cast<int>(std::ceil((room.width() - 1) / pitch));
    for (int column = 0; column < columns && !done(); ++column) {
      const double x = room.lo.x + column * pitch;
      double y = room.hi.y;
      while (!done() && y - room.lo.y >= kLeastTable) {
        const Table& table = tables_[table_];
        const TableDrawn drawn = draw_table(onto, labels_, {x, y}, table, y - room.lo.y, row_);
        row_ = std::max(drawn.next, row_ + 1);  // a row too high for any page is left out
        y = drawn.box.lo.y - kColumnGap;
        if (row_ < table.rows.size()) break;
        ++table_;
        row_ = 0;
      }
    }
  }

 private:
  const Font& labels_;
  std::vector<Table> tables_;
  std::size_t table_ = 0, row_ = 0;
};

}  // namespace

SheetName measuring_name(const Made& made, std::size_t bumper, const PaperKeys& paper) {
  return {stem_of(made, bumper, "measures"),
          say("title.measures", {{"bumper", made.patterns[bumper].bumper}}), SheetKind::Measures,
          paper.sheet};
}

Sheet measuring_sheet(const Made& made, std::size_t bumper, const PaperKeys& paper,
                      const Font& labels) {
  Sheet sheet{measuring_name(made, bumper, paper), {}};
  const Units units = made.job.units;
  const Pattern& pattern = made.patterns[bumper];
  const RunningDimensions figures = running_dimensions(made, bumper);
  const bool inside = made.job.paper.face == PaperFace::Inside;

  PageHead head;
  head.title = {made.job.title,
                sheet.title,
                "",
                {say("measures.head", {{"face", face_words(made)}, {"cut", cut_words(made)}}),
                 same_words(made, bumper)}};
  head.how = {
      say(inside ? "measures.how-inside-up" : "measures.how-outside-up",
          {{"length", dimension_with_unit(mm(pattern.cloth_length), units)},
           {"width", dimension_with_unit(mm(pattern.cloth_width), units)},
           {"end", cover_end_words(made, bumper, !inside)}}),  // the one at the drawing's left
      say(made.job.cloth.relief == Relief::Sewn && !pattern.corners.empty() ? "measures.marks-sewn"
                                                                            : "measures.marks")};

  const auto compose = [&](const Way& way, std::size_t of) {
    std::vector<Page> pages;
    std::optional<Columns> columns;
    while (!columns || (!columns->done() && pages.size() < kMostPages)) {
      Page page = empty_page(paper, way.wide);
      page.name = head.title.subject;
      PageHead own = head;
      own.title.sheet = of_pages(pages.size() + 1, of);
      if (columns) own.how.clear();
      plane::Box room = draw_page_head(page.drawing, labels, printable(page, paper), own);
      const double width = (room.width() - (way.tables - 1) * kColumnGap) / way.tables;
      if (!columns) {
        room = draw_layout(page.drawing, labels, room, made, bumper, figures, way.figures);
        columns.emplace(labels,
                        std::vector<Table>{table_of(figures.along, "measures.column-along", units,
                                                    labels, width, way.close),
                                           table_of(figures.across, "measures.column-across", units,
                                                    labels, width, way.close)});
      }
      columns->fill(page.drawing, room, width + kColumnGap);
      pages.push_back(std::move(page));
    }
    return pages;
  };
  const auto composed = [&](const Way& way) {
    std::vector<Page> pages = compose(way, 1);
    // Heads that say which page it is are higher: that may take one more.
    for (std::size_t of = 1; pages.size() > of;) {
      of = pages.size();
      pages = compose(way, of);
    }
    return pages;
  };
  // The first way with the fewest pages.
  for (const Way& way : kWays) {
    std::vector<Page> pages = composed(way);
    if (sheet.pages.empty() || pages.size() < sheet.pages.size()) sheet.pages = std::move(pages);
    if (sheet.pages.size() == 1) break;
  }
  return sheet;
}

}  // namespace swathe
