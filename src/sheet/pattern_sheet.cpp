#include "sheet/pattern_sheet.hpp"

#include <algorithm>
#include <utility>

#include "draw/marks.hpp"
#include "draw/page_head.hpp"
#include "sheet/file_names.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/same_cover_words.hpp"
#include "sheet/texts.hpp"
#include "tile/correction.hpp"
#include "tile/tile_on_paper.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kMargin = 15.0;
constexpr double kDimension = 20.0;  ///< room for a dimension line beside the cloth
constexpr double kOffCloth = 12.0;   ///< of the dimension line from the cloth
constexpr double kDimensionText = 5.0;
constexpr double kLeastWidth = 420.0;  ///< title, key and scales side by side
constexpr double kPieceMargin = 5.0;

/// "81 3/16 in by 14 7/16 in"
std::string cloth_size_words(const Made& made, std::size_t bumper) {
  const Pattern& pattern = made.patterns[bumper];
  return say("cover.size",
             {{"along", dimension_with_unit(mm(pattern.cloth_length), made.job.units)},
              {"across", dimension_with_unit(mm(pattern.cloth_width), made.job.units)}});
}

}  // namespace

SheetName pattern_name(const Made& made, std::size_t bumper) {
  return {stem_of(made, bumper, "pattern"),
          say("title.cover", {{"bumper", made.patterns[bumper].bumper}}), SheetKind::Pattern,
          "full size"};
}

Sheet pattern_sheet(const Made& made, std::size_t bumper, const Font& labels) {
  Sheet sheet{pattern_name(made, bumper), {}};
  const Pattern& pattern = made.patterns[bumper];
  const Units units = made.job.units;
  const std::string along = dimension_with_unit(mm(pattern.cloth_length), units);
  const std::string across = dimension_with_unit(mm(pattern.cloth_width), units);

  const FlatPoint corner{kMargin + kDimension, kMargin + kDimension};
  Page page;
  page.name = sheet.title;
  page.drawing = draw_pattern(made, bumper, labels, corner);
  PageHead head;
  head.title = {
      made.job.title,
      page.name,
      "",
      {face_words(made), cut_words(made),
       say("cover.measure", {{"along", along}, {"across", across}}), print_words(),
       correction_words(made.job.paper), same_words(made, bumper),
       is_cut_from_another(made, bumper) ? say("same.this-drawing", {{"bumper", pattern.bumper}})
                                         : ""}};
  head.scales = true;
  head.key = kinds_to_explain(page.drawing);

  page.width_mm = std::max(corner.x + pattern.cloth_length + kMargin, kLeastWidth);
  // The head's height is known once it is drawn: measure it in room to spare.
  Drawing measured;
  constexpr double kPlenty = 1000.0;
  const plane::Box room{{kMargin, 0}, {page.width_mm - kMargin, kPlenty}};
  const double head_height = kPlenty - draw_page_head(measured, labels, room, head).hi.y;
  page.height_mm = corner.y + pattern.cloth_width + head_height + kMargin;
  draw_page_head(page.drawing, labels,
                 {{kMargin, 0}, {page.width_mm - kMargin, page.height_mm - kMargin}}, head);

  const FlatPoint far = corner + FlatPoint{pattern.cloth_length, pattern.cloth_width};
  draw_dimension(page.drawing, {corner.x, corner.y - kOffCloth}, {far.x, corner.y - kOffCloth},
                 along, kDimensionText);
  draw_dimension(page.drawing, {corner.x - kOffCloth, corner.y}, {corner.x - kOffCloth, far.y},
                 across, kDimensionText);

  sheet.pages.push_back(std::move(page));
  return sheet;
}

Page pattern_piece(const Made& made, std::size_t bumper, const Font& labels) {
  const Pattern& pattern = made.patterns[bumper];
  Page page;
  page.name = pattern_name(made, bumper).title;
  page.width_mm = pattern.cloth_length + 2 * kPieceMargin;
  page.height_mm = pattern.cloth_width + 2 * kPieceMargin;
  page.drawing = draw_pattern(made, bumper, labels, {kPieceMargin, kPieceMargin});
  return page;
}

std::optional<SheetName> tiles_name(const Made& made, std::size_t bumper, const PaperKeys& paper) {
  if (!holds_tiles(paper)) return {};
  return SheetName{stem_of(made, bumper, "tiles"),
                   say("title.tiles", {{"bumper", made.patterns[bumper].bumper}}), SheetKind::Tiles,
                   paper.sheet};
}

Sheet tiles_sheet(const Made& made, std::size_t bumper, const PaperKeys& paper, const Font& labels,
                  PageFill fill) {
  auto name = tiles_name(made, bumper, paper);
  if (!name) return {};
  Sheet tiles = tile_on_paper(pattern_piece(made, bumper, labels), paper, labels,
                              {name->stem, made.job.title, cut_words(made), face_words(made),
                               same_words(made, bumper), cloth_size_words(made, bumper)},
                              fill);
  return {std::move(*name), std::move(tiles.pages)};
}

}  // namespace swathe
