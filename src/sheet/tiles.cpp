#include "swathe/sheet/tiles.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "sheet/path_clip.hpp"
#include "sheet/pattern_marks.hpp"
#include "sheet/text_box.hpp"
#include "sheet/tile_footer.hpp"
#include "sheet/tile_grid.hpp"
#include "swathe/plane/clip.hpp"
#include "swathe/sheet/furniture.hpp"

namespace swathe {
namespace {

constexpr double kChord = 0.02;                   ///< arcs as ink, mm
constexpr double kTextClear = 1.0;                ///< text stays that far from a tile's edge
constexpr double kDiamondHalf = 4.0;              ///< along the join
constexpr double kDiamondDepth = 5.0;             ///< into the tile
constexpr double kBesideReach = 15.5;             ///< half of a diamond with its name beside it
constexpr double kTrimFrom = 1.0, kTrimTo = 5.0;  ///< outside the image

Box upright(const TextBox& box) {
  Box all;
  for (const FlatPoint p : box.corners()) all.cover(p);
  return all;
}

Ink ink_of(const Drawing& drawing) {
  Ink ink;
  const auto add = [&](const Path& path) {
    const std::vector<FlatPoint> points = flatten(path, kChord);
    for (std::size_t k = 0; k + (path.closed ? 0 : 1) < points.size(); ++k)
      ink.add({points[k], points[(k + 1) % points.size()]});
  };
  for (const Mark& mark : drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark)) add(line->path);
    if (const auto* const fill = std::get_if<FillMark>(&mark))
      for (const Path& outline : fill->outlines) add(outline);
  }
  return ink;
}

/// Counts the strokes that a box lies over. Clusters are found by the upright strips of the page
/// that they reach into.
class Crossings {
 public:
  explicit Crossings(const Ink& ink) : ink_(ink) {
    for (const Ink::Cluster& cluster : ink.clusters) all_.cover(cluster.box);
    strips_.resize(all_.empty() ? 1 : strip_of(all_.hi.x) + 1);
    for (const Ink::Cluster& cluster : ink.clusters)
      for (std::size_t k = strip_of(cluster.box.lo.x); k <= strip_of(cluster.box.hi.x); ++k)
        strips_[k].push_back(&cluster);
  }

  std::size_t of(const TextBox& box) const {
    const Box around = upright(box);
    if (all_.empty() || !all_.meets(around)) return 0;
    std::size_t count = 0;
    const std::size_t first = strip_of(around.lo.x);
    const std::size_t last = std::min(strip_of(around.hi.x), strips_.size() - 1);
    for (std::size_t k = first; k <= last; ++k)
      for (const Ink::Cluster* const cluster : strips_[k]) {
        // One in several strips is met in the first of those that the box reaches too.
        if (!cluster->box.meets(around) || std::max(strip_of(cluster->box.lo.x), first) != k)
          continue;
        for (std::size_t n = cluster->first; n < cluster->last; ++n)
          if (crossed_by(box, ink_.strokes[n].a, ink_.strokes[n].b)) ++count;
      }
    return count;
  }

 private:
  static constexpr double kStrip = 25.0;  ///< mm
  std::size_t strip_of(double x) const {
    return static_cast<std::size_t>(std::max(0.0, x - all_.lo.x) / kStrip);
  }

  const Ink& ink_;
  Box all_;
  std::vector<std::vector<const Ink::Cluster*>> strips_;
};

struct TileAt {
  std::size_t column, row;
  friend bool operator==(TileAt, TileAt) = default;
};

/// A text of the page on its tile.
struct PlacedText {
  TextMark text;
  TextBox box;
  TileAt tile;
};

/// Where two tiles meet; `spots` are the middles of its diamonds.
struct Joint {
  TileAt before, after;  ///< left and right, or upper and lower
  bool upright;
  FlatPoint from, to;
  std::vector<FlatPoint> spots;
};

/// The page taken apart, in the page's own coordinates.
class Tiling {
 public:
  Tiling(const Page& full, const Face& labels, TileGrid grid, const Ink& ink)
      : full_(full), labels_(labels), grid_(std::move(grid)), crossings_(ink) {
    for (std::size_t row = 0; row < grid_.rows; ++row)
      for (std::size_t column = 0; column < grid_.columns; ++column)
        if (grid_.has(column, row)) tiles_.push_back({column, row});
    place_texts();
    find_joints();
  }

  const TileGrid& grid() const { return grid_; }
  const std::vector<TileAt>& tiles() const { return tiles_; }
  Drawing drawn(TileAt tile);

 private:
  Box cell(TileAt tile) const { return grid_.cell(tile.column, tile.row); }
  Box image(TileAt tile) const { return grid_.image(tile.column, tile.row); }
  bool is_taken(const TextBox& box) const;
  void take(const TextBox& box) { taken_.push_back({box, upright(box)}); }

  void place_texts();
  PlacedText placed(const TextMark& text) const;
  void find_joints();
  void add_joint(TileAt before, TileAt after, bool upright);

  void draw_marks(Drawing& onto, const Box& image) const;
  void draw_joint(Drawing& onto, const Joint& joint, bool before) const;
  bool draw_upright_scale(Drawing& onto, TileAt tile) const;

  const Page& full_;
  const Face& labels_;
  TileGrid grid_;
  Crossings crossings_;
  std::vector<TileAt> tiles_;
  std::vector<PlacedText> texts_;
  std::vector<Joint> joints_;
  bool has_upright_scale_ = false;
  struct Taken {
    TextBox box;
    Box around;
  };
  std::vector<Taken> taken_;  ///< by texts, diamonds and scales
};

bool Tiling::is_taken(const TextBox& box) const {
  const Box around = upright(box);
  return std::ranges::any_of(taken_, [&](const Taken& taken) {
    return taken.around.meets(around) && overlap(box, taken.box);
  });
}

void Tiling::place_texts() {
  const auto stays = [&](const TextMark& text) {
    const Box all = upright(box_of(text, labels_));
    return std::ranges::any_of(tiles_, [&](TileAt tile) { return cell(tile).holds(all); });
  };
  // Those that stay come first, so that no other is moved on to them.
  for (const bool staying : {true, false})
    for (const Mark& mark : full_.drawing.marks())
      if (const auto* const text = std::get_if<TextMark>(&mark); text && stays(*text) == staying) {
        texts_.push_back(placed(*text));
        take(texts_.back().box);
      }
}

PlacedText Tiling::placed(const TextMark& text) const {
  const TextBox box = box_of(text, labels_);
  const Box all = upright(box);
  for (const TileAt tile : tiles_)
    if (cell(tile).holds(all)) return {text, box, tile};

  // Moved to where it lies whole, least far, and off other ink where there is such a place.
  PlacedText best{text, box, tiles_.front()};
  double best_cost = std::numeric_limits<double>::infinity();
  for (const TileAt tile : tiles_) {
    const Box room = cell(tile).grown(-kTextClear);
    const auto into = [](double lo, double hi, double from, double to) {
      if (hi - lo > to - from) return 0.5 * (from + to) - 0.5 * (lo + hi);
      return lo < from ? from - lo : hi > to ? to - hi : 0.0;
    };
    const FlatPoint least{into(all.lo.x, all.hi.x, room.lo.x, room.hi.x),
                          into(all.lo.y, all.hi.y, room.lo.y, room.hi.y)};
    if (norm(least) > best_cost) continue;
    for (int dx = -10; dx <= 10; ++dx)
      for (int dy = -10; dy <= 10; ++dy) {
        const FlatPoint shift = least + FlatPoint{3.0 * dx, 3.0 * dy};
        const bool moved = dx != 0 || dy != 0;
        const Box there{all.lo + shift, all.hi + shift};
        if (moved && !cell(tile).grown(-0.5 * kTextClear).holds(there)) continue;
        double cost = norm(shift);
        if (cost >= best_cost) continue;
        TextBox moved_box = box;
        moved_box.middle = box.middle + shift;
        if (is_taken(moved_box)) cost += 1000.0;
        if (cost >= best_cost) continue;
        cost += 100.0 * static_cast<double>(crossings_.of(moved_box));
        if (cost >= best_cost) continue;
        best_cost = cost;
        best = {text, moved_box, tile};
        best.text.at = text.at + shift;
      }
  }
  return best;
}

void Tiling::find_joints() {
  for (const TileAt tile : tiles_) {
    const auto [column, row] = tile;
    if (grid_.has(column + 1, row)) add_joint(tile, {column + 1, row}, true);
    if (grid_.has(column, row + 1)) add_joint(tile, {column, row + 1}, false);
  }
}

void Tiling::add_joint(TileAt before, TileAt after, bool upright) {
  const Box own = cell(before), next = cell(after);
  Joint joint{before, after, upright, {}, {}, {}};
  joint.from = upright ? FlatPoint{own.hi.x, own.hi.y} : FlatPoint{own.lo.x, own.lo.y};
  joint.to = upright ? FlatPoint{own.hi.x, std::max(own.lo.y, next.lo.y)}
                     : FlatPoint{std::min(own.hi.x, next.hi.x), own.lo.y};
  const double long_way = apart(joint.from, joint.to);
  const FlatPoint along = unit(joint.to - joint.from);
  // The ground of a diamond and both its names.
  const TextBox ground = upright ? TextBox{{0, 0}, {1, 0}, 25.0, 5.0}
                                 : TextBox{{kBesideReach - 5.0, 0}, {1, 0}, kBesideReach, 6.5};
  const double start = 6.0, end = upright ? 6.0 : 2 * kBesideReach - 4.0;
  struct Spot {
    double at;
    std::size_t crossed;
    double off;
  };
  std::vector<Spot> spots;
  for (double at = start; at <= long_way - end; at += 3.0) {
    TextBox here = ground;
    here.middle = here.middle + joint.from + at * along;
    if (!is_taken(here)) spots.push_back({at, crossings_.of(here), 0});
  }
  // Two where they are free of ink, else the one that is, else the one that hides least.
  for (const double share : {0.25, 0.75}) {
    for (Spot& spot : spots) spot.off = std::abs(spot.at - share * long_way);
    const auto best = std::ranges::min_element(spots, [](const Spot& a, const Spot& b) {
      return std::tie(a.crossed, a.off) < std::tie(b.crossed, b.off);
    });
    if (best == spots.end() || (best->crossed > 0 && share > 0.5 && !joint.spots.empty())) continue;
    const double at = best->at;
    joint.spots.push_back(joint.from + at * along);
    const double apart_by = upright ? 12.0 : 2 * kBesideReach;
    std::erase_if(spots, [&](const Spot& s) { return std::abs(s.at - at) < apart_by; });
  }
  if (joint.spots.empty()) joint.spots.push_back(joint.from + 0.5 * long_way * along);
  for (const FlatPoint spot : joint.spots) {
    TextBox here = ground;
    here.middle = ground.middle + spot;
    take(here);
  }
  joints_.push_back(std::move(joint));
}

void Tiling::draw_marks(Drawing& onto, const Box& image) const {
  const Region frame = {{image.lo, {image.hi.x, image.lo.y}, image.hi, {image.lo.x, image.hi.y}}};
  for (const Mark& mark : full_.drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark)) {
      for (Path& part : clipped(line->path, image)) onto.line(line->kind, std::move(part));
    } else if (const auto* const fill = std::get_if<FillMark>(&mark)) {
      Box all;
      for (const Path& outline : fill->outlines) all.cover(bounds(outline));
      if (image.holds(all)) {
        onto.fill(fill->kind, fill->colour, fill->outlines);
      } else if (image.meets(all)) {
        Region region;
        for (const Path& outline : fill->outlines) region.push_back(flatten(outline, kChord));
        std::vector<Path> outlines;
        for (const Polygon& polygon : intersect(region, frame))
          outlines.push_back(closed_path(polygon));
        if (!outlines.empty()) onto.fill(fill->kind, fill->colour, std::move(outlines));
      }
    }
  }
}

void Tiling::draw_joint(Drawing& onto, const Joint& joint, bool before) const {
  const FlatPoint inward =
      joint.upright ? FlatPoint{before ? -1.0 : 1.0, 0} : FlatPoint{0, before ? 1.0 : -1.0};
  const TileAt neighbour = before ? joint.after : joint.before;
  const std::string words = "JOIN " + tile_name(neighbour.column, neighbour.row);
  for (const FlatPoint spot : joint.spots) {
    const FlatPoint half = kDiamondHalf * left_of(inward), apex = spot + kDiamondDepth * inward;
    onto.fill(LineKind::Join, kBlack, {closed_path({spot - half, apex, spot + half})});
    if (joint.upright) {
      onto.text(apex + 1.5 * inward - FlatPoint{0, 0.5 * kTextHeight}, words, kTextHeight,
                before ? Anchor::Right : Anchor::Left);
    } else {
      onto.text(spot + FlatPoint{kDiamondHalf + 1.0, before ? 1.5 : -1.5 - kTextHeight}, words,
                kTextHeight);
    }
  }
}

/// A second 100 mm scale, downwards, if the tile has room for it.
bool Tiling::draw_upright_scale(Drawing& onto, TileAt tile) const {
  constexpr double kLong = 100.0, kAcross = 11.0, kStep = 4.0;
  const Box room = cell(tile).grown(-3.0);
  for (double x = room.lo.x; x + kAcross <= room.hi.x; x += kStep)
    for (double y = room.lo.y; y + kLong <= room.hi.y; y += kStep) {
      const TextBox ground = box_of(Box{{x, y}, {x + kAcross, y + kLong}}).grown(2.0);
      if (is_taken(ground) || crossings_.of(ground) > 0) continue;
      draw_check_scale(onto, labels_, {x, y + kLong}, kLong, "100 mm, measure me", true);
      return true;
    }
  return false;
}

Drawing Tiling::drawn(TileAt tile) {
  Drawing drawing;
  const Box own = cell(tile), shown = image(tile);
  std::vector<Path> strips;
  if (shown.hi.x > own.hi.x)
    strips.push_back(rectangle({own.hi.x, shown.lo.y}, {shown.hi.x, own.hi.y}));
  if (shown.lo.y < own.lo.y)
    strips.push_back(rectangle({own.lo.x, shown.lo.y}, {own.hi.x, own.lo.y}));
  if (!strips.empty()) drawing.fill(LineKind::Join, kTint, std::move(strips));

  draw_marks(drawing, shown);
  for (const PlacedText& placed : texts_)
    if (placed.tile == tile) drawing.text(placed.text);

  for (const Joint& joint : joints_) {
    const bool before = joint.before == tile;
    if (!before && joint.after != tile) continue;
    drawing.line(LineKind::Join, joint.from, joint.to);
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
  // One is enough: printers stretch every sheet alike.
  if (!has_upright_scale_) has_upright_scale_ = draw_upright_scale(drawing, tile);
  return drawing;
}

std::vector<Box> text_boxes(const Drawing& drawing, const Face& labels) {
  std::vector<Box> boxes;
  for (const Mark& mark : drawing.marks())
    if (const auto* const text = std::get_if<TextMark>(&mark))
      boxes.push_back(upright(box_of(*text, labels)));
  return boxes;
}

}  // namespace

Sheet tile(const Page& full, const Face& labels, const TileOptions& options) {
  const Ink ink = ink_of(full.drawing);
  const std::vector<Box> whole = text_boxes(full.drawing, labels);
  const double margin = options.margin_mm;
  struct Choice {
    double width, height;
    TileGrid grid;
  };
  std::optional<Choice> best;
  for (const bool turned : {false, true}) {
    const double width = turned ? options.height_mm : options.width_mm;
    const double height = turned ? options.width_mm : options.height_mm;
    const double inside = width - 2 * margin;
    TileGrid grid = fewest_tiles(ink, whole, inside, height - 2 * margin - footer_height(inside),
                                 options.overlap_mm);
    if (!best || grid.count() < best->grid.count()) best = Choice{width, height, std::move(grid)};
  }

  Tiling tiling(full, labels, best->grid, ink);
  Sheet sheet{options.stem, options.title, SheetKind::Tiles, options.paper, {}};
  for (const TileAt at : tiling.tiles()) {
    Page page{best->width, best->height, {}, tile_name(at.column, at.row)};
    const Box own = tiling.grid().cell(at.column, at.row);
    const FlatPoint corner{margin, page.height_mm - margin};  // the image's upper left
    page.drawing.add(tiling.drawn(at), {false, 0, corner - FlatPoint{own.lo.x, own.hi.y}});
    const double inside = page.width_mm - 2 * margin;
    const Box strip{{margin, margin}, {margin + inside, margin + footer_height(inside)}};
    draw_footer(page.drawing, labels, strip, tiling.grid(), at.column, at.row, options);
    sheet.pages.push_back(std::move(page));
  }
  return sheet;
}

}  // namespace swathe
