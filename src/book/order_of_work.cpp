#include "book/chapters.hpp"
#include "book/steps.hpp"
#include "book/words.hpp"
namespace swathe {
namespace {

constexpr double kTools = 42.0, kWaits = 44.0;  ///< widths of the columns
constexpr double kNumber = 9.0;

}  // namespace

void add_order_of_work(const Made& made, Flow& flow) {
  flow.chapter("build book: order of work");
  flow.words(
      "Times are common practice: what the can, the glue or the film says goes before. Start what "
      "has to dry overnight a day early.");
  Table table;
  table.columns = {{"", Anchor::Right, kNumber},
                   {"do", Anchor::Left, flow.width() - kNumber - kTools - kWaits},
                   {"with", Anchor::Left, kTools},
                   {"wait", Anchor::Left, kWaits}};
  for (const WorkStep& step : steps_of(made))
    table.rows.push_back(
        {std::to_string(table.rows.size() + 1), step.what, step.tools, step.waits});
  flow.table(table);
  flow.heading("Tools, all together");
  flow.words(listed(tool_lines(made), ". ") + ".");
}

}  // namespace swathe
