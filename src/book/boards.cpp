#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/workshop.hpp"
#include "book/chapters.hpp"
#include "book/cut_diagram.hpp"
#include "book/neighbors.hpp"
#include "book/piece_table.hpp"
#include "book/square_check.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"
#include "sheet/cautions.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kPlaces = 115.0;  ///< width of the column of marks
constexpr double kHoles = 33.0;    ///< of that of a bracket's holes

void add_cuts(const Made& made, Flow& flow) {
  const std::vector<CutSheet> sheets = sheets_to_cut(made);
  if (sheets.empty()) return;
  const BoardKeys& keys = made.job.boards;
  const Units units = made.job.units;
  flow.heading(say("cuts.heading"));
  flow.words(say("cuts.how", {{"height", exact(keys.height, units)},
                              {"kerf", exact(keys.kerf, units)},
                              {"share", percent(made.stock.sheets_used)}}));
  const auto slanted = [](const bumper::Piece& board) {
    constexpr double kSquare = 0.05;  // deg; less is printed as square
    return std::max(std::abs(board.start.angle_deg), std::abs(board.end.angle_deg)) >= kSquare;
  };
  if (std::ranges::any_of(made.boards, slanted)) flow.words(say("cuts.slanted"));
  const std::string length = exact(keys.stock[0], units), width = exact(keys.stock[1], units);
  int number = 0;
  for (const CutSheet& sheet : sheets) {
    const int first = number + 1;
    number += sheet.alike;
    flow.words(sheet.alike == 1
                   ? say("cuts.one-sheet",
                         {{"number", std::to_string(first)}, {"length", length}, {"width", width}})
                   : say("cuts.alike-sheets", {{"first", std::to_string(first)},
                                               {"last", std::to_string(number)},
                                               {"count", std::to_string(sheet.alike)},
                                               {"length", length},
                                               {"width", width}}));
    flow.picture(draw_sheet_cuts(sheet, flow.labels(), units, flow.width()));
  }
}

void add_square_check(const Made& made, Flow& flow) {
  Table table;
  table.columns = {{say("column.bumper")},
                   {say("square.column-from")},
                   {say("square.column-to")},
                   {say("column.length"), draw::Anchor::Right}};
  for (std::size_t b = 0; b < made.wraps.size(); ++b)
    for (const AcrossBoards& one : across_boards(made, b))
      table.rows.push_back({made.patterns[b].bumper, one.from, one.to,
                            dimension(mm(one.length_mm), made.job.units)});
  if (table.rows.empty()) return;
  flow.heading(say("square.heading"));
  flow.words(say("square.how"));
  flow.table(table);
}

void add_pencil_marks(const Made& made, Flow& flow) {
  flow.heading(say("marks.heading"));
  flow.words(say("marks.how"));
  Table table;
  table.columns = {{say("column.piece")},
                   {say("column.end-next-to")},
                   {say("marks.column-places"), draw::Anchor::Left, kPlaces}};
  const auto add_row = [&](std::size_t bumper, std::size_t leg) {
    table.rows.push_back({board_name(made, bumper, leg), next_to(made, bumper, leg, true), ""});
  };
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    const Pattern& pattern = made.patterns[b];
    std::string last;
    std::size_t leg = 0;  // marks stand in the order of the bumper's sides
    for (std::size_t k = 0; k < pattern.marks.size(); ++k) {
      const MatchMark& mark = pattern.marks[k];
      if (!mark.top) continue;  // the bottom ones stand at the same places
      if (mark.side != last) add_row(b, leg++);
      std::string& cell = table.rows.back().back();
      cell += fmt::format("{}{}: {}", cell.empty() ? "" : ",   ", made.mark_names[b][k],
                          dimension(mm(mark.from_left_mm), made.job.units));
      last = mark.side;
    }
  }
  flow.table(table);
}

/// Where a bracket's holes are on its board, from the end that its edge is measured from, and down
/// from the top.
std::string hole_words(const BracketKeys& keys, Length nearer, Units units) {
  if (keys.cloth == BracketCloth::Window || keys.holes.empty()) return "-";
  std::vector<std::string> holes;
  for (const FlatPoint hole : keys.holes) {
    holes.push_back(say("brackets.hole", {{"along", marked(nearer + mm(hole.x), units)},
                                          {"down", marked(keys.down + mm(hole.y), units)}}));
  }
  return listed(holes, "; ");
}

void add_brackets(const Made& made, Flow& flow) {
  if (made.job.brackets.empty()) return;
  const Units units = made.job.units;
  const auto size = [&](Length length) { return marked(length, units); };
  flow.heading(say("brackets.heading"));
  flow.caution(caution("drill"));
  flow.words(say("brackets.how"));
  Table table;
  table.columns = {{say("brackets.column-number")},
                   {say("column.piece")},
                   {say("column.end-next-to")},
                   {say("brackets.column-nearer"), draw::Anchor::Right},
                   {say("column.width"), draw::Anchor::Right},
                   {say("column.height"), draw::Anchor::Right},
                   {say("brackets.column-down"), draw::Anchor::Right},
                   {say("brackets.column-holes"), draw::Anchor::Left, kHoles},
                   {say("column.cloth")}};
  std::vector<std::vector<std::string>> rows(made.job.brackets.size());
  for (std::size_t b = 0; b < made.patterns.size(); ++b)
    for (const BracketOnPattern& laid : made.patterns[b].brackets) {
      const auto k = static_cast<std::size_t>(laid.keys), leg = static_cast<std::size_t>(laid.leg);
      const BracketKeys& keys = made.job.brackets[k];
      const RunSide& board = made.wraps[b].run().sides[leg];
      const AlongSide bracket = stretch_of(made.frame, board.side, keys);
      const std::string& corner = measured_from(keys);
      const bool from_start = corner.empty() || made.frame.begins_at(board.side, corner);
      const Length nearer =
          mm(from_start ? bracket.from - board.board_from() : board.board_to() - bracket.to);
      rows[k] = {std::to_string(k + 1),
                 board_name(made, b, leg),
                 next_to(made, b, leg, from_start),
                 size(nearer),
                 size(keys.width),
                 size(keys.height),
                 size(keys.down),
                 hole_words(keys, nearer, units),
                 say(keys.cloth == BracketCloth::Window ? "brackets.window" : "brackets.under")};
    }
  table.rows = std::move(rows);
  flow.table(table);
}

}  // namespace

void add_boards(const Made& made, Flow& flow) {
  const BoardKeys& keys = made.job.boards;
  flow.chapter(say("chapter.boards"));
  flow.caution(caution("saw"));
  flow.words(say("boards.are", {{"height", exact(keys.height, made.job.units)},
                                {"thickness", exact(keys.thickness, made.job.units)}}) +
             " " + say("ends.explained"));
  flow.table(piece_table(made, made.boards, sawn));
  add_cuts(made, flow);
  add_square_check(made, flow);
  add_pencil_marks(made, flow);
  add_brackets(made, flow);
}

}  // namespace swathe
