#include <algorithm>
#include <functional>

#include "book/chapters.hpp"
#include "book/hook_and_loop.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"
#include "sheet/back_plan.hpp"
#include "sheet/cautions.hpp"

namespace swathe {
namespace {

using book_texts::say;

void add_backs(const Made& made, Flow& flow) {
  for (std::size_t b = 0; b < made.patterns.size(); ++b)
    flow.picture(draw_backs(made, b, flow.labels(), flow.width()));
}

void add_staples(const Made& made, Flow& flow) {
  std::size_t all = 0;
  Table table;
  table.columns = {{say("column.bumper")},
                   {say("staples.column-one"), draw::Anchor::Right},
                   {say("staples.column-all"), draw::Anchor::Right}};
  const auto sets = static_cast<std::size_t>(cover_sets(made));
  const auto row = [&](const std::string& name, std::size_t one) {
    table.rows.push_back({name, std::to_string(one), std::to_string(one * sets)});
  };
  for (const Pattern& pattern : made.patterns) {
    row(pattern.bumper, pattern.staples.size());
    all += pattern.staples.size();
  }
  if (all == 0) return;
  row(say("row.all"), all);
  const ClothKeys& cloth = made.job.cloth;
  flow.heading(say("staples.heading"));
  flow.caution(caution("staples"));
  flow.words(say("staples.how", {{"line", exact(cloth.staple_line, made.job.units)},
                                 {"spacing", exact(cloth.staple_spacing, made.job.units)}}));
  add_backs(made, flow);
  flow.table(table);
}

void add_hook_and_loop(const Made& made, Flow& flow) {
  if (strip_length(made) == 0) return;
  flow.heading(say("strips.heading"));
  flow.words(
      say("strips.how", {{"width", exact(made.job.cloth.hook_and_loop.strip, made.job.units)}}));
  add_backs(made, flow);
  Table table;
  table.columns = {{say("column.bumper")},
                   {say("column.length"), draw::Anchor::Right},
                   {say("strips.column-boards"), draw::Anchor::Right},
                   {say("strips.column-covers"), draw::Anchor::Right}};
  for (const Pattern& pattern : made.patterns) {
    std::vector<double> lengths;
    for (const plane::Path& strip : pattern.strips) lengths.push_back(length_of_strip(strip));
    std::ranges::sort(lengths, std::greater<>());
    const auto words = [&](std::size_t k) { return dimension(mm(lengths[k]), made.job.units); };
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
  flow.chapter(say("chapter.fastening"));
  add_staples(made, flow);
  add_hook_and_loop(made, flow);
}

}  // namespace swathe
