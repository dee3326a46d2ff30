#include "ways.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "sheet/fold_sheet.hpp"
#include "table.hpp"
#include "text.hpp"

namespace swathe::app {

std::string ways_text(const Made& made, const PrintWays& ways) {
  Table table({{"way", Column::Align::Left, true},
               {"paper", Column::Align::Left, true},
               {"files", Column::Align::Left, true}});
  for (const PrintWay& way : ways.ways) {
    const WayWords words = words_of(way, made);
    table.add({words.way, printable(words.sheets), words.files});
  }
  std::string text = "What to print for the covers; choose one way:\n" + table.to_text(2);
  for (const std::string& note : notes_of(ways, made)) text += paragraph("  ", printable(note));
  return text + "\n";
}

std::string not_on_fold_text(const Made& made, const PrintWays& ways) {
  std::string text;
  if (std::ranges::count(ways.ways, PrintWay::Kind::Tiles, &PrintWay::kind) == 0) return text;
  for (std::size_t b = 0; b < made.patterns.size(); ++b)
    if (const std::string why = not_on_fold(made, b); !why.empty())
      text += paragraph("", fmt::format("bumper {} is not cut on a fold: {}",
                                        printable(made.patterns[b].bumper), why));
  return text;
}

}  // namespace swathe::app
