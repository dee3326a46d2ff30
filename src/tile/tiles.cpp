#include "tile/tiles.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "draw/furniture.hpp"
#include "draw/page_head.hpp"
#include "draw/text_box.hpp"
#include "tile/place_on_first.hpp"
#include "tile/texts.hpp"
#include "tile/tile_footer.hpp"
#include "tile/tile_search.hpp"
#include "tile/tiling.hpp"
#include "tile/words_below.hpp"

namespace swathe {
namespace {

constexpr double kSharp = 0.5;        ///< sine of the least turn at a corner
constexpr double kBesideLine = 1.9;   ///< a tile's edge this near a line is mistaken for it
constexpr double kLeastRoll = 190.0;  ///< least length off a roll, for a tile's words and scales
constexpr double kRollSlack = 1.0;    ///< white on each side of what is drawn
constexpr double kLongEdge = 20.0;    ///< a cut this long: tiles are best not joined along it
constexpr int kEdgeWeight = 8;        ///< how many cut words such an edge counts for
constexpr double kStraight = 0.05;    ///< mm off upright or level
constexpr std::size_t kAnyNumber = std::numeric_limits<std::size_t>::max();
constexpr double kWordWidths[] = {120.0, 80.0, 55.0};
constexpr int kKeyColumns[] = {2, 1, 3};

void add_path(Ink& ink, const plane::Path& path) {
  const std::vector<FlatPoint> points = flatten(path, kChord);
  for (std::size_t k = 0; k + (path.closed ? 0 : 1) < points.size(); ++k)
    ink.add({points[k], points[(k + 1) % points.size()]});
}

Ink ink_of(const Drawing& drawing) {
  Ink ink;
  const auto add = [&](const plane::Path& path) { add_path(ink, path); };
  for (const draw::Mark& mark : drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark)) add(line->path);
    if (const auto* const fill = std::get_if<FillMark>(&mark))
      for (const plane::Path& outline : fill->outlines) add(outline);
  }
  return ink;
}

/// Where the cut outlines turn sharply.
std::vector<FlatPoint> corners_of(const Drawing& drawing) {
  std::vector<FlatPoint> corners;
  for (const draw::Mark& mark : drawing.marks()) {
    const auto* const line = std::get_if<LineMark>(&mark);
    if (!line || line->kind != LineKind::Cut || !line->path.closed) continue;
    const std::vector<plane::Vertex>& v = line->path.vertices;
    for (std::size_t k = 0; k < v.size(); ++k) {
      const FlatPoint in = v[k].at - v[(k + v.size() - 1) % v.size()].at;
      const FlatPoint out = v[(k + 1) % v.size()].at - v[k].at;
      if (std::abs(cross(in, out)) > kSharp * norm(in) * norm(out)) corners.push_back(v[k].at);
    }
  }
  return corners;
}

/// Both ends of every long edge of the cut outlines that is level or upright, as tiles' edges are.
std::vector<FlatPoint> edge_ends_of(const Drawing& drawing) {
  std::vector<FlatPoint> ends;
  for (const draw::Mark& mark : drawing.marks()) {
    const auto* const line = std::get_if<LineMark>(&mark);
    if (!line || line->kind != LineKind::Cut) continue;
    const std::vector<plane::Vertex>& v = line->path.vertices;
    for (std::size_t k = 0; k + (line->path.closed ? 0 : 1) < v.size(); ++k) {
      const FlatPoint from = v[k].at, to = v[(k + 1) % v.size()].at, way = to - from;
      const bool along = std::abs(way.x) < kStraight || std::abs(way.y) < kStraight;
      if (v[k].bulge == 0 && along && norm(way) > kLongEdge) ends.insert(ends.end(), {from, to});
    }
  }
  return ends;
}

/// What a tile's edge should neither cut nor lie beside: whole texts, and places on long lines that
/// the edge would be mistaken for.
std::vector<WholeBox> whole_boxes(const Drawing& drawing, const Font& labels) {
  std::vector<WholeBox> boxes;
  const auto add = [&](FlatPoint p, int weight = 1) {
    boxes.push_back({plane::Box{p, p}.grown(kBesideLine), weight});
  };
  for (const FlatPoint corner : corners_of(drawing)) add(corner);
  for (const FlatPoint end : edge_ends_of(drawing)) add(end, kEdgeWeight);
  for (const draw::Mark& mark : drawing.marks()) {
    if (const auto* const text = std::get_if<TextMark>(&mark))
      boxes.push_back({bounds(box_of(*text, labels))});
    const auto* const line = std::get_if<LineMark>(&mark);
    if (line && (line->kind == LineKind::Corner || line->kind == LineKind::StapleLine))
      for (const plane::Vertex& end : line->path.vertices) add(end.at);
  }
  return boxes;
}

/// A page off a roll is no longer than what is drawn, or its own words, need.
void cut_to_length(double& width, double& height, const Ink& ink, const TileOptions& options) {
  const plane::Box drawn = ink.bounds();
  if (drawn.empty()) return;
  const double around = 2 * (options.margin_mm + kRollSlack) + options.overlap_mm;
  if (width > height)
    width = std::min(width, std::max(drawn.width(), kLeastRoll) + around);
  else
    height = std::min(
        height, drawn.height() + around + footer_height(width - 2 * options.margin_mm, options));
}

/// The way the paper lies, how long it is, and which tiles there are.
struct Layout {
  double width, height;
  TileGrid grid;
  std::tuple<std::size_t, std::size_t, std::size_t> cost;  ///< tiles, slivers and nearly empty ones
};
Layout best_layout(const Ink& ink, const TileWishes& wishes, const TileOptions& options) {
  std::optional<Layout> best;
  // One that has no fewer tiles than the best is of use only where that has poor ones.
  const auto most = [&] {
    if (!best) return kAnyNumber;
    const auto& [tiles, slivers, empty] = best->cost;
    return slivers + empty == 0 ? tiles - 1 : tiles;
  };
  for (const bool turned : {false, true}) {
    double width = turned ? options.height_mm : options.width_mm;
    double height = turned ? options.width_mm : options.height_mm;
    if (options.roll) cut_to_length(width, height, ink, options);
    const double inside = width - 2 * options.margin_mm;
    TileGrid grid = fewest_tiles(ink, wishes, inside,
                                 height - 2 * options.margin_mm - footer_height(inside, options),
                                 options.overlap_mm, most());
    if (grid.used.empty()) continue;  // it takes more tiles than the other way
    const std::tuple cost{grid.count(), slivers(grid, ink), nearly_empty(grid, ink)};
    if (!best || cost < best->cost) best = Layout{width, height, std::move(grid), cost};
  }
  return std::move(*best);
}

/// The layouts to try for a page, the best first: with room for the words below it, unless that
/// takes more tiles, and without.
std::vector<Layout> layouts_of(const Page& full, const Ink& ink, const WordsBelow& below,
                               const Font& labels, const TileOptions& options) {
  TileWishes wishes{corners_of(full.drawing), whole_boxes(full.drawing, labels)};
  std::vector<Layout> layouts = {best_layout(ink, wishes, options)};
  if (below.empty()) return layouts;
  Ink with_room = ink;
  add_path(with_room, plane::rectangle(below.room().lo, below.room().hi));
  wishes.whole.push_back({below.room(), kEdgeWeight});
  layouts.push_back(best_layout(with_room, wishes, options));
  if (layouts[1].grid.count() <= layouts[0].grid.count()) std::swap(layouts[0], layouts[1]);
  return layouts;
}

/// Its pages, with nothing on them yet.
std::vector<Page> blank_pages(const Layout& layout) {
  std::vector<Page> pages;
  for (const TileAt at : tiles_of(layout.grid))
    pages.push_back({layout.width, layout.height, {}, tile_name(layout.grid, at.column, at.row)});
  return pages;
}

/// The lines of the page and of its tiles, explained.
std::vector<LineKind> key_of(const Page& full, bool joined) {
  std::vector<LineKind> key = kinds_to_explain(full.drawing);
  if (joined) key.insert(key.end(), {LineKind::Join, LineKind::Trim});
  return key;
}

/// What is said once, each on the first tile that has room for it.
void place_blocks(Tiling& tiling, const Page& full, const Font& labels, double inside,
                  const TileOptions& options) {
  const TileGrid& grid = tiling.grid();
  const bool joined = grid.count() > 1;
  if (const auto size = plan_size(labels, grid, inside)) tiling.place(plan_of(labels, grid), *size);
  std::string words;
  const auto add = [&](const std::string& sentence) {
    words += (words.empty() ? "" : "\n") + sentence;
  };
  if (joined) add(tile_texts::say("glue.steps"));
  if (!options.size.empty()) {
    add(tile_texts::say("glue.size", {{"size", options.size}}));
    add(tile_texts::say("glue.copy"));
  }
  place_on_first(tiling, kWordWidths, [&](Drawing& onto, double width) {
    return draw_text_block(onto, labels, {0, 0}, width, words);
  });
  const std::vector<LineKind> key = key_of(full, joined);
  place_on_first(tiling, kKeyColumns, [&](Drawing& onto, int columns) {
    return draw_line_key(onto, labels, {0, 0}, key, columns);
  });
}

}  // namespace

Sheet tile(const Page& full, const Font& labels, const TileOptions& options, PageFill fill) {
  const Ink ink = ink_of(full.drawing);
  const double margin = options.margin_mm;
  const double narrowest =
      std::min(options.width_mm, options.height_mm) - 2 * margin - options.overlap_mm;
  const WordsBelow below(options.below, labels, ink.bounds(), narrowest);
  std::vector<Layout> layouts = layouts_of(full, ink, below, labels, options);
  std::optional<Page> with_words;
  std::optional<Tiling> taken_apart;
  const auto tiling_of = [&](const Page& page, const Layout& layout) -> Tiling& {
    return taken_apart.emplace(page, labels, layout.grid, ink);
  };
  const auto has_room = [&](const Layout& layout) {
    return below.empty() || below.place(tiling_of(full, layout));
  };
  auto layout = std::ranges::find_if(layouts, has_room);
  if (layout == layouts.end()) {  // on very small paper
    layout = layouts.begin();
    with_words = full;
    below.draw(with_words->drawing);
    tiling_of(*with_words, *layout);
  }
  Sheet sheet{{options.stem, options.title, SheetKind::Tiles, options.paper}, blank_pages(*layout)};
  if (fill == PageFill::Blank) return sheet;

  Tiling& tiling = taken_apart ? *taken_apart : tiling_of(full, *layout);
  const double inside = layout->width - 2 * margin;
  place_blocks(tiling, full, labels, inside, options);
  for (std::size_t k = 0; k < sheet.pages.size(); ++k) {
    const TileAt at = tiling.tiles()[k];
    Page& page = sheet.pages[k];
    const plane::Box own = tiling.grid().cell(at.column, at.row);
    const FlatPoint corner{margin, page.height_mm - margin};  // the image's upper left
    page.drawing.add(tiling.drawn(at), {false, 0, corner - FlatPoint{own.lo.x, own.hi.y}});
    const plane::Box strip{{margin, margin},
                           {margin + inside, margin + footer_height(inside, options)}};
    draw_footer(page.drawing, labels, strip, tiling.grid(), at.column, at.row, options);
  }
  return sheet;
}

}  // namespace swathe
