#include "sheet/fold_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "pattern/half_pattern.hpp"
#include "sheet/file_names.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/same_cover_words.hpp"
#include "sheet/texts.hpp"
#include "stock/same_covers.hpp"
#include "tile/tile_on_paper.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kPieceMargin = 5.0;
constexpr double kSame = 0.05;  ///< mm, as patterns are compared

bool mirrored_places(const std::vector<PlacedNumeral>& numerals, int bumper, double fold) {
  return std::ranges::all_of(numerals, [&](const PlacedNumeral& p) {
    return p.bumper != bumper || std::ranges::any_of(numerals, [&](const PlacedNumeral& q) {
             return q.bumper == bumper && std::abs(p.center_s + q.center_s - 2 * fold) < kSame &&
                    std::abs(p.center_u - q.center_u) < kSame &&
                    std::abs(p.width - q.width) < kSame && std::abs(p.height - q.height) < kSame;
           });
  });
}

/// What keeps a cover in one piece from being its own mirror image: "outline", "windows",
/// "numerals"; empty where half of it can be laid on a fold of the cloth. For numerals only their
/// places count: digits need not be mirror images.
std::vector<std::string> unlike_halves(const Made& made, std::size_t bumper) {
  const Pattern& pattern = made.patterns[bumper];
  std::vector<std::string> unlike = unlike_mirrored(pattern);
  if (!mirrored_places(made.numerals_on_patterns(), static_cast<int>(bumper), fold_of(pattern)))
    unlike.push_back("numerals");
  return unlike;
}

}  // namespace

std::string not_on_fold(const Made& made, std::size_t bumper) {
  if (!made.joins[bumper].empty()) return say("fold.joined");
  const std::vector<std::string> unlike = unlike_halves(made, bumper);
  if (unlike.empty()) return "";
  if (unlike == std::vector<std::string>{"outline"}) return say("fold.outline-unlike");
  return say("fold.parts-unlike", {{"parts", sheet_texts::listed(difference_words(unlike))}});
}

std::optional<SheetName> fold_name(const Made& made, std::size_t bumper, const PaperKeys& paper) {
  if (!holds_tiles(paper) || !not_on_fold(made, bumper).empty()) return {};
  return SheetName{stem_of(made, bumper, "fold"),
                   say("title.fold", {{"bumper", made.patterns[bumper].bumper}}), SheetKind::Fold,
                   paper.sheet};
}

Sheet fold_sheet(const Made& made, std::size_t bumper, const PaperKeys& paper, const Font& labels,
                 PageFill fill) {
  auto name = fold_name(made, bumper, paper);
  if (!name) return {};
  const Pattern& pattern = made.patterns[bumper];
  Page page;
  page.name = say("fold.half", {{"bumper", pattern.bumper}});
  page.width_mm = 0.5 * pattern.cloth_length + 2 * kPieceMargin;
  page.height_mm = pattern.cloth_width + 2 * kPieceMargin;
  page.drawing = draw_half_pattern(made, bumper, labels, {kPieceMargin, kPieceMargin});
  Sheet tiles = tile_on_paper(
      page, paper, labels,
      {name->stem, made.job.title, cut_words(made), face_words(made), same_words(made, bumper)},
      fill);
  return {std::move(*name), std::move(tiles.pages)};
}

}  // namespace swathe
