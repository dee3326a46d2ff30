#include "book/chapters.hpp"
#include "book/steps.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kTools = 38.0, kWaits = 42.0;  ///< widths of the columns
constexpr double kNumber = 9.0;

}  // namespace

void add_order_of_work(const Made& made, Flow& flow) {
  flow.chapter(say("chapter.order"));
  // The tools first: fetched before the work, and never left over on a page of their own.
  flow.heading(say("order.tools"));
  flow.words(listed(tool_lines(made), ". ") + ".");
  flow.heading(say("order.steps"));
  flow.words(say("order.times"));
  Table table;
  table.columns = {
      {"", draw::Anchor::Right, kNumber},
      {say("order.column-do"), draw::Anchor::Left, flow.width() - kNumber - kTools - kWaits},
      {say("order.column-with"), draw::Anchor::Left, kTools},
      {say("order.column-wait"), draw::Anchor::Left, kWaits}};
  for (const WorkStep& step : steps_of(made))
    table.rows.push_back(
        {std::to_string(table.rows.size() + 1), step.what, step.tools, step.waits});
  flow.table(table);
}

}  // namespace swathe
