#include <fmt/format.h>

#include "book/chapters.hpp"
#include "book/cut_diagram.hpp"
#include "book/neighbors.hpp"
#include "book/piece_table.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"
#include "sheet/cautions.hpp"
#include "sheet/cover_ordinates.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kPlaces = 115.0;  ///< width of the column of marks

void add_cuts(const Made& made, Flow& flow) {
  const std::vector<CutSheet> sheets = sheets_to_cut(made);
  if (sheets.empty()) return;
  const BoardKeys& keys = made.job.boards;
  const Units units = made.job.units;
  flow.heading(say("cuts.heading"));
  flow.words(say("cuts.how", {{"height", exact(keys.height, units)},
                              {"kerf", exact(keys.kerf, units)},
                              {"share", percent(made.stock.sheets_used)}}));
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

void add_pencil_marks(const Made& made, Flow& flow) {
  flow.heading(say("marks.heading"));
  flow.words(say("marks.how"));
  Table table;
  table.columns = {{say("column.piece")},
                   {say("column.end-next-to")},
                   {say("marks.column-places"), Anchor::Left, kPlaces}};
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    const Pattern& pattern = made.patterns[b];
    std::string last;
    std::size_t leg = 0;  // marks stand in the order of the bumper's sides
    for (std::size_t k = 0; k < pattern.marks.size(); ++k) {
      const MatchMark& mark = pattern.marks[k];
      if (!mark.top) continue;  // the bottom ones stand at the same places
      if (mark.side != last)
        table.rows.push_back({pattern.bumper + " " + mark.side, next_to(made, b, leg++, true), ""});
      std::string& cell = table.rows.back().back();
      cell += fmt::format("{}{}: {}", cell.empty() ? "" : ",   ", made.mark_names[b][k],
                          figure(mm(mark.from_left_mm), made.job.units));
      last = mark.side;
    }
  }
  flow.table(table);
}

void add_brackets(const Made& made, Flow& flow) {
  if (made.job.brackets.empty()) return;
  const auto fig = [&](Length length) { return figure(length, made.job.units); };
  flow.heading(say("brackets.heading"));
  flow.caution(caution("drill"));
  flow.words(say("brackets.how"));
  Table table;
  table.columns = {{say("brackets.column-number")},
                   {say("column.piece")},
                   {say("column.end-next-to")},
                   {say("brackets.column-nearer"), Anchor::Right},
                   {say("column.width"), Anchor::Right},
                   {say("column.height"), Anchor::Right},
                   {say("brackets.column-down"), Anchor::Right},
                   {say("column.cloth")}};
  for (std::size_t k = 0; k < made.job.brackets.size(); ++k) {
    const BracketKeys& keys = made.job.brackets[k];
    const std::size_t bumper = bumper_of(made, keys.bumper);
    const std::size_t leg = leg_on(made, bumper, keys.side);
    table.rows.push_back(
        {std::to_string(k + 1), keys.bumper + " " + keys.side,
         next_to(made, bumper, leg, keys.from == FromEnd::Left), fig(keys.at), fig(keys.width),
         fig(keys.height), fig(keys.down),
         say(keys.cloth == BracketCloth::Window ? "brackets.window" : "brackets.under")});
  }
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
  flow.table(piece_table(made, made.boards));
  for (const StockCut& cut : made.stock.boards.too_long)
    flow.words(say("boards.too-long",
                   {{"piece", cut.label}, {"length", exact(mm(cut.length), made.job.units)}}));
  add_cuts(made, flow);
  add_pencil_marks(made, flow);
  add_brackets(made, flow);
}

}  // namespace swathe
