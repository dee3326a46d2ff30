#include "swathe/sheet/fold_sheet.hpp"

#include <fmt/format.h>

#include <utility>
#include <vector>

#include "sheet/half_pattern.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/same_words.hpp"
#include "swathe/sheet/stems.hpp"
#include "tile/tile_on_paper.hpp"

namespace swathe {
namespace {

constexpr double kPieceMargin = 5.0;

}  // namespace

std::string not_on_fold(const Made& made, std::size_t bumper) {
  const auto unlike =
      unlike_halves(made.patterns[bumper], made.numerals_on_patterns(), static_cast<int>(bumper));
  if (unlike.empty()) return "";
  if (unlike.front() == "seams") return "it is sewn together from pieces";
  std::string words;
  for (std::size_t k = 0; k < unlike.size(); ++k)
    words += (k == 0 ? "" : k + 1 == unlike.size() ? " and " : ", ") + unlike[k];
  const bool one = unlike.size() == 1 && unlike.front() == "outline";
  return fmt::format("its {} {} not alike on both halves", words, one ? "is" : "are");
}

Sheet fold_sheet(const Made& made, std::size_t bumper, const Font& labels) {
  if (!not_on_fold(made, bumper).empty()) return {};
  const Pattern& pattern = made.patterns[bumper];
  Page page;
  page.name = fmt::format("bumper {}, half, on the fold", pattern.bumper);
  page.width_mm = 0.5 * pattern.cloth_length + 2 * kPieceMargin;
  page.height_mm = pattern.cloth_width + 2 * kPieceMargin;
  page.drawing = draw_half_pattern(made, bumper, labels, {kPieceMargin, kPieceMargin});
  Sheet sheet = tile_on_paper(page, made.job.paper, labels,
                              {stem_of(made, bumper, "fold"), made.job.title, cut_words(made),
                               face_words(made), same_words(made, bumper)});
  sheet.title = fmt::format("bumper {}, half on the fold, tiles", pattern.bumper);
  sheet.kind = SheetKind::Fold;
  return sheet;
}

}  // namespace swathe
