#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/type.hpp"

// What every sheet has besides its subject: titles, scales, keys, tables, cautions. Each function
// starts at an upper left corner, works downwards and returns the box it has taken.
namespace swathe {

/// Heights of lettering, of the capitals. Source: ISO 3098-1, nominal sizes.
inline constexpr double kTitleHeight = 5.0, kTextHeight = 3.5, kTableHeight = 2.5;
/// From base line to base line, of the capitals' height.
inline constexpr double kLineStep = 1.7;
/// Width at which each sentence of a caution is one line.
inline constexpr double kCautionWidth = 140.0;

/// Words broken into lines no wider than that; a single word wider than that keeps a line of its
/// own. A line break in the words is kept.
std::vector<std::string> wrap_text(const Font& labels, std::string_view words, double width_mm,
                                   double height_mm);

/// Wrapped text; the box is as wide as its widest line.
plane::Box draw_text_block(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                           std::string_view words, double height_mm = kTextHeight);

/// Several, one below the other, so far apart that what is wrapped can be told from the next.
plane::Box draw_text_blocks(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                            const std::vector<std::string>& texts);

/// A line with end ticks to hold a ruler to, its length's words above it; upright ones start at
/// the top and run down.
plane::Box draw_check_scale(Drawing& onto, const Font& labels, FlatPoint top_left, double length_mm,
                            std::string_view words, bool upright = false);

/// "100 mm, measure me".
std::string metric_scale_words();

/// The 100 mm and the 4 in scale, one below the other, each with "measure me".
plane::Box draw_check_scales(Drawing& onto, const Font& labels, FlatPoint top_left);

/// How a sheet at full size is printed: "print at 100 %".
std::string print_words();

/// What tells one sheet from another. Empty parts take no room.
struct TitleBlock {
  std::string title;               ///< the job
  std::string subject;             ///< "bumper A, cover"
  std::string sheet;               ///< "B2 of 14"
  std::vector<std::string> lines;  ///< "cut 1 red, 1 blue", "INSIDE UP", "dimensions in inches"
};
plane::Box draw_title_block(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                            const TitleBlock& words);

/// What a kind of line is called on every sheet: "CUT", "STITCH".
std::string key_words(LineKind kind);

/// A sample of each kind beside its words, down and then across in columns.
plane::Box draw_line_key(Drawing& onto, const Font& labels, FlatPoint top_left,
                         const std::vector<LineKind>& kinds, int columns = 1);

/// A warning in a frame beside an exclamation mark. People read two lines of it, and not more.
plane::Box draw_caution(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                        std::string_view words);

/// A two-headed arrow; its words are the caller's to place.
void draw_long_grain(Drawing& onto, FlatPoint from, FlatPoint to);

/// A table of plain cells under headings.
struct Table {
  struct Column {
    std::string heading;
    draw::Anchor anchor = draw::Anchor::Left;
    double width_mm = 0;  ///< longer cells are wrapped; 0: as wide as its widest cell
    bool boxed = false;   ///< a line down both edges: boxes to write in
  };
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;  ///< each at most a cell a column
  bool close = false;                          ///< rows close together, a rule below each third
  std::vector<std::size_t> marked = {};        ///< rows that stand out: tinted, a bar beside them
};

/// The width that a column takes by its own: its `width_mm`, else that of its widest cell.
double natural_width(const Table& table, std::size_t column, const Font& labels,
                     double height_mm = kTableHeight);

/// The width that a column's longest word takes: narrower, it would run into the next column.
double least_width(const Table& table, std::size_t column, const Font& labels,
                   double height_mm = kTableHeight);

/// As many rows, from `first` on, as fit into `room_mm` of height with the headings.
struct TableDrawn {
  plane::Box box;
  std::size_t next = 0;  ///< the first row that is left
};
TableDrawn draw_table(Drawing& onto, const Font& labels, FlatPoint top_left, const Table& table,
                      double room_mm = 1e9, std::size_t first = 0, double height_mm = kTableHeight);

}  // namespace swathe
