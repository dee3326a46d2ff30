#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "book/chapters.hpp"
#include "book/hook_and_loop.hpp"
#include "book/words.hpp"
#include "sheet/back_plan.hpp"
#include "sheet/cautions.hpp"
#include "sheet/running.hpp"

namespace swathe {
namespace {

void add_backs(const Made& made, Flow& flow) {
  for (std::size_t b = 0; b < made.patterns.size(); ++b)
    flow.picture(draw_backs(made, b, flow.labels(), flow.width()));
}

void add_staples(const Made& made, Flow& flow) {
  std::size_t all = 0;
  Table table;
  table.columns = {{"bumper"}, {"staples", Anchor::Right}, {"all colors", Anchor::Right}};
  const auto sets = static_cast<std::size_t>(cover_sets(made));
  const auto row = [&](const std::string& name, std::size_t one) {
    table.rows.push_back({name, std::to_string(one), std::to_string(one * sets)});
  };
  for (const Pattern& pattern : made.patterns) {
    row(pattern.bumper, pattern.staples.size());
    all += pattern.staples.size();
  }
  if (all == 0) return;
  row("together", all);
  const ClothKeys& cloth = made.job.cloth;
  flow.heading("Staples");
  flow.caution(caution("staples"));
  flow.words(fmt::format(
      "The bumpers' backs, seen from inside the machine: drive by the numbers, from the middle "
      "outwards, top and bottom in turn. {} from the board's edge, at most {} apart. None on a "
      "bracket (gray, by its number) or in a corner.",
      exact(cloth.staple_line, made.job.units), exact(cloth.staple_spacing, made.job.units)));
  add_backs(made, flow);
  flow.table(table);
}

void add_hook_and_loop(const Made& made, Flow& flow) {
  if (strip_length(made) == 0) return;
  flow.heading("Hook-and-loop");
  flow.words(fmt::format(
      "The bumpers' backs, seen from inside the machine. Strips are {} wide: the harder half goes "
      "on the boards where they are drawn, the softer one on the inside of the cover, none on a "
      "bracket (gray). Strips of each cover, the longest first:",
      exact(made.job.cloth.hook_and_loop.strip, made.job.units)));
  add_backs(made, flow);
  Table table;
  table.columns = {{"bumper"},
                   {"length", Anchor::Right},
                   {"on the boards", Anchor::Right},
                   {"on all covers", Anchor::Right}};
  for (const Pattern& pattern : made.patterns) {
    std::vector<double> lengths;
    for (const Path& strip : pattern.strips) lengths.push_back(length_of_strip(strip));
    std::ranges::sort(lengths, std::greater<>());
    const auto words = [&](std::size_t k) { return figure(mm(lengths[k]), made.job.units); };
    for (std::size_t k = 0, next = 0; k < lengths.size(); k = next) {
      // Alike where they are printed alike.
      while (next < lengths.size() && words(next) == words(k)) ++next;
      const int alike = static_cast<int>(next - k);
      table.rows.push_back({pattern.bumper, words(k), std::to_string(alike),
                            std::to_string(alike * cover_sets(made))});
    }
  }
  flow.table(table);
}

}  // namespace

void add_fastening(const Made& made, Flow& flow) {
  flow.chapter("build book: fastening");
  add_staples(made, flow);
  add_hook_and_loop(made, flow);
}

}  // namespace swathe
