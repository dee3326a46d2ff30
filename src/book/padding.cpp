#include <fmt/format.h>

#include <algorithm>

#include "book/chapters.hpp"
#include "book/cut_diagram.hpp"
#include "book/piece_table.hpp"
#include "book/words.hpp"
#include "sheet/cautions.hpp"
#include "sheet/running.hpp"
#include "swathe/bumper/voids.hpp"

namespace swathe {
namespace {

constexpr double kSquareMm2 = 100.0;  ///< in a square centimeter
constexpr double kNone = 0.05;        ///< mm; less is no length at all

void add_cuts(const Made& made, Flow& flow) {
  const StockPlan& plan = made.stock.padding;
  if (plan.sticks.empty()) return;
  flow.heading("Cuts of the padding, from the left");
  flow.words(fmt::format("{} of {}. {} of the stock is used.",
                         counted(static_cast<int>(plan.sticks.size()), padding_noun(made.job)),
                         exact(made.job.padding.stock, made.job.units),
                         share_words(plan.used_fraction)));
  for (const CutStick& stick : sticks_to_cut(plan, 0.0))  // a knife takes no kerf
    flow.picture(draw_stick_cuts(stick, flow.labels(), made.job.units, flow.width()));
}

void add_voids(const Made& made, Flow& flow) {
  Table fill;
  fill.columns = {{"bumper"},
                  {"corner", Anchor::Left},
                  {"strips", Anchor::Right},
                  {"length", Anchor::Right},
                  {"section, cm2", Anchor::Right},
                  {"all", Anchor::Right}};
  for (const Wrap& wrap : made.wraps)
    for (const CornerVoid& hollow :
         corner_voids(made.frame, made.section, wrap.run(), made.job.padding))
      fill.rows.push_back({hollow.bumper,
                           fmt::format("{} / {}", hollow.side_before, hollow.side_after),
                           std::to_string(hollow.strips), figure(mm(hollow.length), made.job.units),
                           plain_number(hollow.section_area / kSquareMm2, 1),
                           std::to_string(hollow.strips * padded_sets(made.job))});
  if (fill.rows.empty()) return;
  flow.words(
      "Where round padding butts at a corner, hollows stay open. Fill them with strips of the "
      "same padding, cut to wedge in:");
  flow.table(fill);
}

}  // namespace

void add_padding(const Made& made, Flow& flow) {
  flow.heading("Padding");
  flow.caution(caution("blade"));
  std::string what = padding_words(made.job);
  what.front() = what.front() == 'r' ? 'R' : 'B';
  flow.words(what + ". Left and right as seen from outside the machine.");
  const std::vector<Overhang> past = overhangs(made.boards, made.padding);
  const bool any = std::ranges::any_of(
      past, [](const Overhang& over) { return std::max(over.at_start, over.at_end) >= kNone; });
  flow.table(piece_table(made, made.padding, any ? past : std::vector<Overhang>{}));
  if (any)
    flow.words(
        "Past: so far it runs on beyond the end of its own board, where no board of its side is "
        "behind it.");
  add_too_long(made, made.stock.padding, "padding stock (join two lengths)", flow);
  add_cuts(made, flow);
  add_voids(made, flow);
}

}  // namespace swathe
