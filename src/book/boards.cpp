#include <fmt/format.h>

#include "book/chapters.hpp"
#include "book/cut_diagram.hpp"
#include "book/piece_table.hpp"
#include "book/words.hpp"
#include "sheet/cautions.hpp"
#include "sheet/running.hpp"

namespace swathe {
namespace {

void add_cuts(const Made& made, Flow& flow) {
  const std::vector<CutSheet> sheets = sheets_to_cut(made);
  if (sheets.empty()) return;
  const BoardKeys& keys = made.job.boards;
  const Units units = made.job.units;
  flow.heading("Cuts, in the order of their numbers");
  flow.words(fmt::format(
      "Rip the strips first, {} wide, each against the fence; then cut each strip from the left. A "
      "kerf of {} lies between two pieces. Slanted ends: cut to length here, then to their angle. "
      "{} of the stock is used; waste of a board's width serves for other work.",
      exact(keys.height, units), exact(keys.kerf, units), share_words(made.stock.sheets_used)));
  int number = 0;
  for (const CutSheet& sheet : sheets) {
    const int first = number + 1;
    number += sheet.alike;
    flow.words(fmt::format("{} of {} by {}:",
                           sheet.alike == 1
                               ? fmt::format("Sheet {}", first)
                               : fmt::format("Sheets {} to {}, x {}", first, number, sheet.alike),
                           exact(keys.stock[0], units), exact(keys.stock[1], units)));
    flow.picture(draw_sheet_cuts(sheet, flow.labels(), units, flow.width()));
  }
}

void add_pencil_marks(const Made& made, Flow& flow) {
  flow.heading("Pencil marks on the boards");
  flow.words(
      "On the inside face, top and bottom edge, from its left end as seen from outside: the "
      "inside corner or the free end.");
  Table table;
  table.columns = {{"bumper"}, {"side"}, {"mark and distance", Anchor::Left, 120}};
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    const Pattern& pattern = made.patterns[b];
    std::string last;
    for (std::size_t k = 0; k < pattern.marks.size(); ++k) {
      const MatchMark& mark = pattern.marks[k];
      if (!mark.top) continue;  // the bottom ones stand at the same places
      if (mark.side != last) table.rows.push_back({pattern.bumper, mark.side, ""});
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
  flow.heading("Brackets");
  flow.caution(caution("drill"));
  flow.words(
      "Fit them, and their bolts, before the padding. Nearer edge: from that end of the inside "
      "face, left and right as seen from outside; below the board's top edge.");
  Table table;
  table.columns = {{"no."},
                   {"bumper"},
                   {"side"},
                   {"nearer edge", Anchor::Left},
                   {"width", Anchor::Right},
                   {"height", Anchor::Right},
                   {"below the top", Anchor::Right},
                   {"cloth", Anchor::Left}};
  for (std::size_t k = 0; k < made.job.brackets.size(); ++k) {
    const BracketKeys& keys = made.job.brackets[k];
    table.rows.push_back(
        {std::to_string(k + 1), keys.bumper, keys.side,
         fmt::format("{} from the {}", fig(keys.at), keys.from == FromEnd::Left ? "left" : "right"),
         fig(keys.width), fig(keys.height), fig(keys.down),
         keys.cloth == BracketCloth::Window ? "window, cut last" : "passes under"});
  }
  flow.table(table);
}

}  // namespace

void add_boards(const Made& made, Flow& flow) {
  const BoardKeys& keys = made.job.boards;
  flow.chapter("build book: boards and padding");
  flow.caution(caution("saw"));
  flow.words(fmt::format(
      "{} high, {} thick. Left and right as seen from outside the machine; lengths along the "
      "longer face, angles off square.",
      exact(keys.height, made.job.units), exact(keys.thickness, made.job.units)));
  flow.table(piece_table(made, made.boards));
  add_too_long(made, made.stock.boards, "board stock", flow);
  add_cuts(made, flow);
  add_pencil_marks(made, flow);
  add_brackets(made, flow);
}

}  // namespace swathe
