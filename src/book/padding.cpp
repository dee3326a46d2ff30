#include <fmt/format.h>

#include <algorithm>

#include "book/chapters.hpp"
#include "book/cut_diagram.hpp"
#include "book/piece_table.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"
#include "sheet/cautions.hpp"
#include "sheet/cover_ordinates.hpp"
#include "swathe/bumper.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kSquareMm2 = 100.0;  ///< in a square centimeter
constexpr double kNone = 0.05;        ///< mm; less is no length at all

void add_cuts(const Made& made, Flow& flow) {
  const StockPlan& plan = made.stock.padding;
  if (plan.sticks.empty()) return;
  flow.heading(say("padding.cuts-heading"));
  flow.words(say("padding.cuts-of",
                 {{"pieces", counted_padding(static_cast<int>(plan.sticks.size()), made.job)},
                  {"length", exact(made.job.padding.stock, made.job.units)},
                  {"share", percent(plan.used_fraction)}}));
  for (const CutStick& stick : sticks_to_cut(plan, 0.0))  // a knife takes no kerf
    flow.picture(draw_stick_cuts(stick, flow.labels(), made.job.units, flow.width()));
}

void add_voids(const Made& made, Flow& flow) {
  Table fill;
  fill.columns = {{say("column.bumper")},
                  {say("padding.column-corner")},
                  {say("padding.column-strips"), Anchor::Right},
                  {say("column.length"), Anchor::Right},
                  {say("padding.column-across"), Anchor::Right},
                  {say("column.all-sets"), Anchor::Right}};
  for (const Wrap& wrap : made.wraps)
    for (const CornerVoid& hollow :
         corner_voids(made.frame, made.section, wrap.run(), made.job.padding))
      fill.rows.push_back({hollow.bumper,
                           fmt::format("{} / {}", hollow.side_before, hollow.side_after),
                           std::to_string(hollow.strips), figure(mm(hollow.length), made.job.units),
                           plain_number(hollow.section_area / kSquareMm2, 1),
                           std::to_string(hollow.strips * padded_sets(made.job))});
  if (fill.rows.empty()) return;
  flow.words(say("padding.hollows"));
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
  flow.table(piece_table(made, made.padding, any ? past : std::vector<Overhang>{}));
  for (const StockCut& cut : made.stock.padding.too_long)
    flow.words(say("padding.too-long", {{"piece", cut.label}, {"length", full(mm(cut.length))}}));
  add_cuts(made, flow);
  add_voids(made, flow);
}

}  // namespace swathe
