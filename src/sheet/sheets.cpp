#include "swathe/sheet/sheets.hpp"

#include <fmt/format.h>

#include <cstddef>
#include <utility>

#include "sheet/pattern_drawing.hpp"
#include "sheet/same_words.hpp"
#include "sheet/tile_on_paper.hpp"
#include "swathe/sheet/list_sheet.hpp"
#include "swathe/sheet/numeral_sheets.hpp"
#include "swathe/sheet/pattern_sheet.hpp"
#include "swathe/sheet/stems.hpp"
#include "swathe/sheet/tape_sheet.hpp"
#include "swathe/sheet/template_sheets.hpp"
#include "swathe/sheet/view_sheet.hpp"

namespace swathe {
std::vector<Sheet> all_sheets(const Made& made, const Face& labels) {
  std::vector<Sheet> sheets;
  const auto add = [&](Sheet sheet) {
    if (!sheet.pages.empty()) sheets.push_back(std::move(sheet));
  };
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    add(pattern_sheet(made, b, labels));
    Sheet tiles = tile_on_paper(
        pattern_piece(made, b, labels), made, labels,
        {stem_of(made, b, "tiles"), cut_words(made), face_words(made), same_words(made, b)});
    tiles.title = fmt::format("bumper {}, tiles", made.patterns[b].bumper);
    add(std::move(tiles));
    add(tape_sheet(made, b, labels));
    add(template_sheets(made, b, labels));
  }
  if (made.numerals) add(numeral_sheets(made, labels));
  if (made.sight && !made.sight->scene.numbers.empty()) add(view_sheet(made, labels));
  add(list_sheet(made, labels));
  return sheets;
}

}  // namespace swathe
