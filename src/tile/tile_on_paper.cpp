#include "tile/tile_on_paper.hpp"

#include <algorithm>
#include <utility>

#include "swathe/job.hpp"
#include "tile/correction.hpp"

namespace swathe {
namespace {

// Below this the tiles' own words find no room.
constexpr double kLeastWide = 110.0, kLeastHigh = 80.0;

}  // namespace

bool holds_tiles(const PaperKeys& paper) {
  const double wide = (paper.width - 2 * paper.margin).mm();
  const double high = (paper.height - 2 * paper.margin).mm();
  const double shorter = std::min(wide, high), longer = std::max(wide, high);
  return longer >= kLeastWide && shorter >= kLeastHigh && shorter > 2 * paper.overlap.mm();
}

Sheet tile_on_paper(const Page& page, const PaperKeys& paper, const Font& labels, TileWords words,
                    PageFill fill) {
  if (!holds_tiles(paper)) return {};
  TileOptions options;
  options.paper = paper.sheet;
  options.width_mm = paper.width.mm();
  options.height_mm = paper.height.mm();
  options.margin_mm = paper.margin.mm();
  options.overlap_mm = paper.overlap.mm();
  options.stem = std::move(words.stem);
  options.title = std::move(words.title);
  options.subject = page.name;
  options.cut_words = std::move(words.cut);
  options.face_words = std::move(words.face);
  options.note = std::move(words.note);
  options.size = std::move(words.size);
  options.below = std::move(words.below);
  options.roll = paper.sheet == kRoll;
  options.correction = correction_words(paper);
  return tile(page, labels, options, fill);
}

}  // namespace swathe
