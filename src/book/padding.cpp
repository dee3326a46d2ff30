#include <fmt/format.h>

#include <algorithm>

#include "book/chapters.hpp"
#include "book/cut_diagram.hpp"
#include "book/hollow_drawing.hpp"
#include "book/neighbors.hpp"
#include "book/piece_table.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"
#include "rules/practice.hpp"
#include "sheet/cautions.hpp"
#include "swathe/bumper.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kJoints = 40.0;  ///< width of the column
constexpr double kNone = 0.05;    ///< mm; less is no length at all

void add_cuts(const Made& made, Flow& flow) {
  const StockPlan& plan = made.stock.padding;
  if (plan.sticks.empty()) return;
  flow.heading(say("padding.cuts-heading"));
  flow.words(say("padding.cuts-of",
                 {{"pieces", counted_padding(static_cast<int>(plan.sticks.size()), made.job)},
                  {"length", exact(made.job.padding.stock, made.job.units)},
                  {"share", percent(plan.used_fraction)}}));
  constexpr double kKerf = 0;  // a knife takes none
  for (const CutStick& stick : sticks_to_cut(plan, kKerf, padding_subjects(made)))
    flow.picture(draw_stick_cuts(stick, flow.labels(), made.job.units, flow.width()));
}

/// "on front", the side that bent padding starts on, or "next to left".
std::string start_words(const Made& made, const bumper::Piece& piece) {
  if (piece.bends.empty())
    return say("padding.start-next-to", {{"neighbor", next_to(made, piece, true)}});
  return say("padding.start-on", {{"side", piece.side.substr(0, piece.side.find(" + "))}});
}

void add_splices(const Made& made, Flow& flow) {
  const std::vector<Splice>& splices = made.stock.padding.splices;
  if (splices.empty()) return;
  const Units units = made.job.units;
  flow.words(say("padding.splices", {{"clear", exact(practice::kJointFromCorner, units)}}));
  Table table;
  table.columns = {{say("column.piece")},
                   {say("column.length"), draw::Anchor::Right},
                   {say("padding.column-parts"), draw::Anchor::Right},
                   {say("padding.column-joints"), draw::Anchor::Left, kJoints},
                   {say("padding.column-from")}};
  for (const Splice& splice : splices) {
    const auto piece = std::ranges::find(made.padding, splice.label, piece_name);
    std::vector<std::string> joints;
    for (const double joint : splice.joints) joints.push_back(dimension(mm(joint), units));
    table.rows.push_back({splice.label, dimension(mm(splice.length), units),
                          std::to_string(splice.joints.size() + 1), listed(joints),
                          start_words(made, *piece)});
  }
  flow.table(table);
}

void add_voids(const Made& made, Flow& flow) {
  Table fill;
  fill.columns = {{say("column.bumper")},
                  {say("padding.column-corner")},
                  {say("padding.column-strips"), draw::Anchor::Right},
                  {say("column.length"), draw::Anchor::Right},
                  {say("padding.column-sides"), draw::Anchor::Right},
                  {say("column.all-sets"), draw::Anchor::Right}};
  for (const Wrap& wrap : made.wraps)
    for (const CornerVoid& hollow :
         corner_voids(made.frame, made.section, wrap.run(), made.job.padding))
      fill.rows.push_back(
          {hollow.bumper, fmt::format("{} / {}", hollow.side_before, hollow.side_after),
           std::to_string(hollow.strips), dimension(mm(hollow.length), made.job.units),
           dimension(mm(hollow.leg), made.job.units),
           std::to_string(hollow.strips * padded_sets(made.job))});
  if (fill.rows.empty()) return;
  flow.words(say("padding.hollows"));
  flow.picture(draw_filled_hollows(made, flow.labels()));
  flow.table(fill);
}

}  // namespace

void add_padding(const Made& made, Flow& flow) {
  flow.heading(say("padding.heading"));
  flow.caution(caution("blade"));
  const PaddingKeys& keys = made.job.padding;
  const auto full = [&](Length length) { return exact(length, made.job.units); };
  const std::string what =
      keys.form == PaddingForm::Noodles
          ? say("padding.noodles-are", {{"diameter", full(keys.diameter)}})
          : say("padding.blocks-are", {{"depth", full(keys.depth)}, {"height", full(keys.height)}});
  const std::vector<Overhang> past = overhangs(made.boards, made.padding);
  const bool any = std::ranges::any_of(
      past, [](const Overhang& over) { return std::max(over.at_start, over.at_end) >= kNone; });
  flow.words(what + " " + say("ends.as-boards") + (any ? " " + say("padding.beyond") : ""));
  flow.table(piece_table(made, made.padding, dimension, any ? past : std::vector<Overhang>{}));
  add_splices(made, flow);
  add_cuts(made, flow);
  add_voids(made, flow);
}

}  // namespace swathe
