#include "ways.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

#include "sheet/file_names.hpp"
#include "sheet/fold_sheet.hpp"
#include "swathe/job.hpp"
#include "table.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

/// Pages of a bumper's sheet.
std::size_t pages_of(const Made& made, const std::vector<ToldSheet>& sheets, std::size_t bumper,
                     std::string_view what) {
  const auto sheet = std::ranges::find(sheets, stem_of(made, bumper, what), &ToldSheet::stem);
  return sheet == sheets.end() ? 0 : sheet->pages;
}

}  // namespace

std::string ways_text(const Made& made, const std::vector<ToldSheet>& sheets) {
  Table table({{"cover"},
               {"tiles", Column::Align::Right},
               {"half on the fold", Column::Align::Right},
               {"measuring sheet and templates", Column::Align::Right}});
  std::vector<std::string> shared;  // prints that serve two covers
  std::size_t fewest = 0;
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    if (const auto& same = made.same[b]; same && same->but_for.empty()) {
      const std::string other =
          printable(made.patterns[static_cast<std::size_t>(same->other)].bumper);
      const std::string as = "as " + other;
      shared.push_back(
          fmt::format("{}'s do for {} too", other, printable(made.patterns[b].bumper)));
      table.add({printable(made.patterns[b].bumper), as, as, as});
      continue;
    }
    const std::size_t tiles = pages_of(made, sheets, b, "tiles");
    const std::size_t fold = pages_of(made, sheets, b, "fold");
    const std::size_t measures = pages_of(made, sheets, b, "measures");
    const std::size_t templates = pages_of(made, sheets, b, "templates");
    std::size_t least = measures + templates;
    for (const std::size_t way : {tiles, fold})
      if (way > 0) least = std::min(least, way);
    fewest += least;
    table.add({printable(made.patterns[b].bumper), tiles > 0 ? std::to_string(tiles) : "-",
               fold > 0 ? std::to_string(fold) : "-",
               fmt::format("{} + {} = {}", measures, templates, measures + templates)});
    if (const std::string why = not_on_fold(made, b); !why.empty())
      table.add_note("not on a fold: " + why, 1);
  }
  const std::string& paper = made.job.paper.sheet;
  const std::string text = fmt::format(
      "{} for each cover, for each way to make it:\n{}",
      paper == kRoll ? "Pages off the roll" : "Sheets of " + printable(paper), table.to_text(2));
  std::string words = fmt::format("{} enough for all covers",
                                  paper == kRoll ? count_of(fewest, "page is", "pages are")
                                                 : count_of(fewest, "sheet is", "sheets are"));
  for (std::size_t k = 0; k < shared.size(); ++k) words += (k == 0 ? ": " : ", ") + shared[k];
  return text + paragraph("", words + ".") + "\n";
}

}  // namespace swathe::app
