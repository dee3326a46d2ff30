#include <algorithm>

#include "draw/furniture.hpp"
#include "draw/marks.hpp"

namespace swathe {
namespace {

constexpr double kCellPad = 1.6;  ///< between words and the column's edges
constexpr double kBar = 1.0;      ///< beside a row that stands out

using Cell = std::vector<std::string>;  ///< lines

/// Where the columns' edges lie, from left to right.
std::vector<double> edges_of(const Table& table, const Font& labels, double left,
                             double height_mm) {
  std::vector<double> edges = {left};
  for (std::size_t c = 0; c < table.columns.size(); ++c)
    edges.push_back(edges.back() + natural_width(table, c, labels, height_mm));
  return edges;
}

/// The row's cells broken to their columns' widths.
std::vector<Cell> wrapped(const std::vector<std::string>& row, const std::vector<double>& edges,
                          const Font& labels, double height_mm) {
  std::vector<Cell> cells;
  for (std::size_t c = 0; c < row.size() && c + 1 < edges.size(); ++c) {
    // A little more than there is: a column of natural width is exactly as wide as its widest cell.
    const double room = edges[c + 1] - edges[c] - 2 * kCellPad + 1e-6;
    cells.push_back(wrap_text(labels, row[c], room, height_mm));
  }
  return cells;
}

/// How rows stand, in the lettering's height.
struct Rows {
  double pitch, base;  ///< of one line; its base line below the row's top
  double step;         ///< from a line to the next of its row
  std::size_t ruled;   ///< a rule below each so many
};
constexpr Rows kOpen = {1.75, 1.35, kLineStep, 1}, kClose = {1.6, 1.27, 1.5, 3};

const Rows& rows_of(const Table& table) { return table.close ? kClose : kOpen; }

bool has_boxes(const Table& table) {
  return std::ranges::any_of(table.columns, &Table::Column::boxed);
}

double height_of(const Table& table, const std::vector<Cell>& cells, double height_mm) {
  std::size_t lines = 1;
  for (const Cell& cell : cells) lines = std::max(lines, cell.size());
  return (rows_of(table).pitch + static_cast<double>(lines - 1) * rows_of(table).step) * height_mm;
}

void draw_cells(Drawing& onto, const Table& table, const std::vector<Cell>& cells,
                const std::vector<double>& edges, double top, double height_mm) {
  for (std::size_t c = 0; c < cells.size(); ++c) {
    const draw::Anchor anchor = table.columns[c].anchor;
    FlatPoint base{0, top - rows_of(table).base * height_mm};
    if (anchor == draw::Anchor::Left) base.x = edges[c] + kCellPad;
    if (anchor == draw::Anchor::Middle) base.x = 0.5 * (edges[c] + edges[c + 1]);
    if (anchor == draw::Anchor::Right) base.x = edges[c + 1] - kCellPad;
    for (const std::string& line : cells[c]) {
      onto.text(base, line, height_mm, anchor);
      base.y -= rows_of(table).step * height_mm;
    }
  }
}

/// A tint, which a gray printer may lose, and a bar, which it does not.
void mark_row(Drawing& onto, double left, double right, double bottom, double top) {
  const auto filled = [&](Color color, double from, double to) {
    onto.fill(LineKind::Thin, color,
              {plane::closed_path({{from, bottom}, {to, bottom}, {to, top}, {from, top}})});
  };
  filled(kTint, left, right);
  filled(kBlack, left, left + kBar);
}

}  // namespace

double natural_width(const Table& table, std::size_t column, const Font& labels, double height_mm) {
  const Table::Column& c = table.columns[column];
  if (c.width_mm > 0) return c.width_mm;
  double widest = labels.text_width_mm(c.heading, height_mm);
  for (const auto& row : table.rows)
    if (column < row.size())
      widest = std::max(widest, labels.text_width_mm(row[column], height_mm));
  return widest + 2 * kCellPad;
}

double least_width(const Table& table, std::size_t column, const Font& labels, double height_mm) {
  double longest = 0;
  const auto look_at = [&](const std::string& cell) {
    for (const std::string& word : wrap_text(labels, cell, 0, height_mm))
      longest = std::max(longest, labels.text_width_mm(word, height_mm));
  };
  look_at(table.columns[column].heading);
  for (const auto& row : table.rows)
    if (column < row.size()) look_at(row[column]);
  return longest + 2 * kCellPad;
}

TableDrawn draw_table(Drawing& onto, const Font& labels, FlatPoint top_left, const Table& table,
                      double room_mm, std::size_t first, double height_mm) {
  const std::vector<double> edges = edges_of(table, labels, top_left.x, height_mm);
  const double left = edges.front(), right = edges.back();
  std::vector<std::string> headings;
  for (const Table::Column& column : table.columns) headings.push_back(column.heading);
  const std::vector<Cell> heading = wrapped(headings, edges, labels, height_mm);
  double y = top_left.y - height_of(table, heading, height_mm);
  draw_cells(onto, table, heading, edges, top_left.y, height_mm);
  const double head = y;
  onto.line(LineKind::Outline, {left, head}, {right, head});

  const double lowest = top_left.y - room_mm;
  std::size_t next = first;
  for (; next < table.rows.size(); ++next) {
    const std::vector<Cell> cells = wrapped(table.rows[next], edges, labels, height_mm);
    const double below = y - height_of(table, cells, height_mm);
    if (below < lowest) break;
    if (std::ranges::count(table.marked, next) > 0) mark_row(onto, left, right, below, y);
    draw_cells(onto, table, cells, edges, y, height_mm);
    if (has_boxes(table) || (next - first + 1) % rows_of(table).ruled == 0 ||
        next + 1 == table.rows.size())
      onto.line(LineKind::Thin, {left, below}, {right, below});
    y = below;
  }
  for (std::size_t c = 0; c < table.columns.size(); ++c)
    if (table.columns[c].boxed)
      for (const double x : {edges[c], edges[c + 1]}) onto.line(LineKind::Thin, {x, head}, {x, y});
  return {{{left, y}, {right, top_left.y}}, next};
}

}  // namespace swathe
