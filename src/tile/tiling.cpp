#include "tile/tiling.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "draw/furniture.hpp"
#include "draw/marks.hpp"
#include "draw/path_clip.hpp"
#include "plane/clip.hpp"

namespace swathe {
namespace {

constexpr double kTrimFrom = 1.0, kTrimTo = 5.0;  ///< outside the image

}  // namespace

std::vector<TileAt> tiles_of(const TileGrid& grid) {
  std::vector<TileAt> tiles;
  for (std::size_t row = 0; row < grid.rows; ++row)
    for (std::size_t column = 0; column < grid.columns; ++column)
      if (grid.has(column, row)) tiles.push_back({column, row});
  const std::vector<std::size_t> order = glue_order(grid);
  std::ranges::sort(tiles, {},
                    [&](TileAt tile) { return order[tile.row * grid.columns + tile.column]; });
  return tiles;
}

Tiling::Tiling(const Page& full, const Font& labels, TileGrid grid, const Ink& ink)
    : full_(full),
      labels_(labels),
      grid_(std::move(grid)),
      crossings_(ink, {{0, 0}, {full.width_mm, full.height_mm}}),
      order_(glue_order(grid_)),
      tiles_(tiles_of(grid_)),
      taken_strips_({{0, 0}, {full.width_mm, full.height_mm}}) {
  place_texts();
  find_joints();
}

void Tiling::draw_marks(Drawing& onto, const plane::Box& image) const {
  const plane::Region frame = {
      {image.lo, {image.hi.x, image.lo.y}, image.hi, {image.lo.x, image.hi.y}}};
  for (const draw::Mark& mark : full_.drawing.marks()) {
    const Showing same(onto, shown_by(mark));
    if (const auto* const line = std::get_if<LineMark>(&mark)) {
      for (plane::Path& part : clipped(line->path, image)) onto.line(line->kind, std::move(part));
    } else if (const auto* const fill = std::get_if<FillMark>(&mark)) {
      plane::Box all;
      for (const plane::Path& outline : fill->outlines) all.cover(bounds(outline));
      if (image.holds(all)) {
        onto.fill(fill->kind, fill->color, fill->outlines);
      } else if (image.meets(all)) {
        plane::Region region;
        for (const plane::Path& outline : fill->outlines)
          region.push_back(flatten(outline, kChord));
        std::vector<plane::Path> outlines;
        for (const plane::Polygon& polygon : intersect(region, frame))
          outlines.push_back(closed_path(polygon));
        if (!outlines.empty()) onto.fill(fill->kind, fill->color, std::move(outlines));
      }
    }
  }
}

/// The lower left corner of a place without ink, texts and diamonds.
std::optional<FlatPoint> Tiling::free_place(TileAt tile, FlatPoint size) const {
  constexpr double kPlaceStep = 4.0;
  const plane::Box room = cell(tile).grown(-3.0);
  const auto places = [&](double free) {
    return static_cast<int>(std::floor(free / kPlaceStep)) + 1;
  };
  const int across = places(room.width() - size.x), up = places(room.height() - size.y);
  for (int column = 0; column < across; ++column)
    for (int row = 0; row < up; ++row) {
      const FlatPoint lo = room.lo + kPlaceStep * FlatPoint{1.0 * column, 1.0 * row};
      const TextBox ground = box_of(plane::Box{lo, lo + size}).grown(2.0);
      if (!is_taken(ground) && crossings_.of(ground) == 0) return lo;
    }
  return std::nullopt;
}

/// A second 100 mm scale, downwards, if the tile has room for it.
bool Tiling::draw_upright_scale(Drawing& onto, TileAt tile) {
  constexpr double kLong = 100.0, kAcross = 11.0;
  const auto at = free_place(tile, {kAcross, kLong});
  if (!at) return false;
  draw_check_scale(onto, labels_, *at + FlatPoint{0, kLong}, kLong, metric_scale_words(), true);
  return true;
}

std::optional<std::size_t> Tiling::room_for(FlatPoint size) const {
  for (std::size_t k = 0; k < tiles_.size(); ++k)
    if (free_place(tiles_[k], size)) return k;
  return std::nullopt;
}

bool Tiling::place(const Drawing& block, FlatPoint size) {
  const auto tile = room_for(size);
  if (!tile) return false;
  const auto at = free_place(tiles_[*tile], size);
  take(box_of(plane::Box{*at, *at + size}));
  blocks_.push_back({tiles_[*tile], *at, block});
  return true;
}

bool Tiling::place_at(FlatPoint lo, const Drawing& block, FlatPoint size) {
  constexpr double kTouching = 1e-6;
  const plane::Box box{lo, lo + size};
  const TextBox inside = box_of(box.grown(-kTouching));
  if (is_taken(inside) || crossings_.of(inside) > 0) return false;
  const auto tile = std::ranges::find_if(
      tiles_, [&](TileAt at) { return cell(at).holds(box.grown(-kTouching)); });
  if (tile == tiles_.end()) return false;
  take(box_of(box));
  blocks_.push_back({*tile, lo, block});
  return true;
}

Drawing Tiling::drawn(TileAt tile) {
  Drawing drawing;
  const plane::Box own = cell(tile), shown = image(tile);
  std::vector<plane::Path> strips;
  if (shown.hi.x > own.hi.x)
    strips.push_back(plane::rectangle({own.hi.x, shown.lo.y}, {shown.hi.x, own.hi.y}));
  if (shown.lo.y < own.lo.y)
    strips.push_back(plane::rectangle({own.lo.x, shown.lo.y}, {own.hi.x, own.lo.y}));
  if (!strips.empty()) drawing.fill(LineKind::Join, kTint, std::move(strips));

  draw_marks(drawing, shown);
  for (const PlacedText& placed : texts_)
    if (placed.tile == tile) drawing.text(placed.text);

  for (const Joint& joint : joints_) {
    const bool before = joint.before == tile;
    if (!before && joint.after != tile) continue;
    drawing.line(before ? LineKind::Join : LineKind::Trim, joint.from, joint.to);
    draw_joint(drawing, joint, before);
    if (before) continue;
    // This edge is trimmed: crop marks outside the image.
    const FlatPoint along = unit(joint.to - joint.from);
    drawing.line(LineKind::Trim, joint.from - kTrimFrom * along, joint.from - kTrimTo * along);
    const FlatPoint end =
        joint.upright ? FlatPoint{own.lo.x, shown.lo.y} : FlatPoint{shown.hi.x, own.hi.y};
    const double to = joint.upright ? kTrimFrom + 2.5 : kTrimTo;  // the words stand below
    drawing.line(LineKind::Trim, end + kTrimFrom * along, end + to * along);
  }
  for (const Block& block : blocks_)
    if (block.tile == tile) drawing.add(block.drawing, {false, 0, block.at});
  // One is enough: printers stretch every sheet alike.
  if (!has_upright_scale_) has_upright_scale_ = draw_upright_scale(drawing, tile);
  return drawing;
}

}  // namespace swathe
