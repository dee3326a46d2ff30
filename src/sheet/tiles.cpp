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
#include "sheet/strips.hpp"
#include "sheet/text_box.hpp"
#include "sheet/tile_footer.hpp"
#include "sheet/tile_grid.hpp"
#include "swathe/plane/clip.hpp"
#include "swathe/sheet/furniture.hpp"

namespace swathe {
namespace {

constexpr double kChord = 0.02;      ///< arcs as ink, mm
constexpr double kTextClear = 1.0;   ///< text stays that far from a tile's edge
constexpr double kStep = 3.0;        ///< from one place tried to the next
constexpr double kNearReach = 30.0;  ///< of a moved text; most find room so near
constexpr double kFarReach = 450.0;  ///< past any tile of A2
constexpr double kNameReach = 18.0;  ///< of a neighbour's name from its diamond
constexpr double kNameStep = 2.0;
constexpr double kEdge = 0.5;                     ///< of the clear a moved text may use up
constexpr double kCrossed = 1000.0;               ///< a stroke under a text costs so many mm
constexpr double kInkClear = 0.3;                 ///< from a moved text to a line
constexpr double kDiamondHalf = 4.0;              ///< along the join
constexpr double kDiamondDepth = 5.0;             ///< into the tile
constexpr double kBesideReach = 15.5;             ///< half of a diamond with its name beside it
constexpr double kLeastRoll = 190.0;              ///< of a page off a roll: its words and scales
constexpr double kRollSlack = 1.0;                ///< white on each side of what is drawn
constexpr double kTrimFrom = 1.0, kTrimTo = 5.0;  ///< outside the image

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

/// Counts the strokes that a box lies over.
class Crossings {
 public:
  Crossings(const Ink& ink, const Box& page) : ink_(ink), strips_(page) {
    for (std::size_t k = 0; k < ink.clusters.size(); ++k) strips_.add(ink.clusters[k].box, k);
  }

  std::size_t of(const TextBox& box) const {
    const Box around = bounds(box);
    std::size_t count = 0;
    strips_.any_near(around, [&](std::size_t k) {
      const Ink::Cluster& cluster = ink_.clusters[k];
      if (!cluster.box.meets(around)) return false;
      for (std::size_t n = cluster.first; n < cluster.last; ++n)
        if (crossed_by(box, ink_.strokes[n].a, ink_.strokes[n].b)) ++count;
      return false;  // on to the next
    });
    return count;
  }

 private:
  const Ink& ink_;
  Strips strips_;
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

/// Where two tiles meet.
struct Joint {
  struct Diamond {
    FlatPoint middle;
    TextMark on_before, on_after;  ///< the neighbour's name beside each half
  };
  TileAt before, after;  ///< left and right, or upper and lower
  bool upright;
  FlatPoint from, to;
  std::vector<Diamond> diamonds;

  /// Away from the joint, into one of its tiles.
  FlatPoint inward(bool into_before) const {
    const double way = into_before ? 1.0 : -1.0;
    return upright ? FlatPoint{-way, 0} : FlatPoint{0, way};
  }
};

/// The page taken apart, in the page's own coordinates.
class Tiling {
 public:
  Tiling(const Page& full, const Face& labels, TileGrid grid, const Ink& ink)
      : full_(full),
        labels_(labels),
        grid_(std::move(grid)),
        crossings_(ink, {{0, 0}, {full.width_mm, full.height_mm}}),
        taken_strips_({{0, 0}, {full.width_mm, full.height_mm}}) {
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
  void take(const TextBox& box) {
    const Box around = bounds(box);
    taken_strips_.add(around, taken_.size());
    taken_.push_back({box, around});
  }

  void place_texts();
  PlacedText placed(const TextMark& text) const;
  struct Settled {
    TextMark text;
    TextBox box;
    double cost;  ///< in mm moved; past kCrossed it lies over ink or another text
  };
  Settled settle(const TextMark& text, const Box& room, double reach, double step,
                 double worst = std::numeric_limits<double>::infinity()) const;
  void find_joints();
  void add_joint(TileAt before, TileAt after, bool upright);
  std::vector<FlatPoint> diamond_spots(const Joint& joint) const;
  TextMark neighbour_name(const Joint& joint, FlatPoint diamond, bool on_before) const;

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
  Strips taken_strips_;
};

bool Tiling::is_taken(const TextBox& box) const {
  const Box around = bounds(box);
  return taken_strips_.any_near(around, [&](std::size_t k) {
    return taken_[k].around.meets(around) && overlap(box, taken_[k].box);
  });
}

void Tiling::place_texts() {
  const auto stays = [&](const TextMark& text) {
    const Box all = bounds(box_of(text, labels_));
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
  const Box all = bounds(box);
  for (const TileAt tile : tiles_)
    if (cell(tile).holds(all)) return {text, box, tile};

  // Moved to where it lies whole, least far, and off other ink where there is such a place.
  PlacedText best{text, box, tiles_.front()};
  double cost = std::numeric_limits<double>::infinity();
  for (const double reach : {kNearReach, kFarReach}) {
    for (const TileAt tile : tiles_) {
      const Settled settled = settle(text, cell(tile).grown(-kTextClear), reach, kStep, cost);
      if (settled.cost < cost) best = {settled.text, settled.box, tile};
      cost = std::min(cost, settled.cost);
    }
    if (cost < kCrossed) break;
  }
  return best;
}

/// The place up to `reach` away, each way in steps, where a text lies inside `room` and hides
/// least: the way moved, and much more for each stroke under it, count against a place.
Tiling::Settled Tiling::settle(const TextMark& text, const Box& room, double reach, double step,
                               double worst) const {
  const TextBox box = box_of(text, labels_);
  const Box all = bounds(box);
  const auto into = [](double lo, double hi, double from, double to) {
    if (hi - lo > to - from) return 0.5 * (from + to) - 0.5 * (lo + hi);
    return lo < from ? from - lo : hi > to ? to - hi : 0.0;
  };
  const FlatPoint least{into(all.lo.x, all.hi.x, room.lo.x, room.hi.x),
                        into(all.lo.y, all.hi.y, room.lo.y, room.hi.y)};
  Settled best{text, box, worst};
  if (norm(least) - kEdge >= worst) return best;  // no place of this room is nearer
  const int steps = static_cast<int>(reach / step);
  for (int dx = -steps; dx <= steps; ++dx)
    for (int dy = -steps; dy <= steps; ++dy) {
      const FlatPoint shift = least + FlatPoint{step * dx, step * dy};
      double cost = norm(shift);
      if (cost >= best.cost) continue;
      const bool moved = dx != 0 || dy != 0;
      if (moved && !room.grown(kEdge).holds(Box{all.lo + shift, all.hi + shift})) continue;
      TextBox there = box;
      there.middle = box.middle + shift;
      if (is_taken(there)) cost += 10 * kCrossed;
      if (cost >= best.cost) continue;
      cost += kCrossed * static_cast<double>(crossings_.of(there.grown(kInkClear)));
      if (cost >= best.cost) continue;
      best = {text, there, cost};
      best.text.at = text.at + shift;
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
  const std::vector<FlatPoint> spots = diamond_spots(joint);
  const FlatPoint along = unit(joint.to - joint.from);
  for (const FlatPoint spot : spots) take({spot, along, kDiamondHalf, kDiamondDepth});
  for (const FlatPoint spot : spots) {
    joint.diamonds.push_back({spot, {}, {}});
    for (const bool on_before : {true, false}) {
      TextMark& name = on_before ? joint.diamonds.back().on_before : joint.diamonds.back().on_after;
      name = neighbour_name(joint, spot, on_before);
      take(box_of(name, labels_));
    }
  }
  joints_.push_back(std::move(joint));
}

/// Two where they and their names are free of ink, else the one that is, else the one that hides
/// least.
std::vector<FlatPoint> Tiling::diamond_spots(const Joint& joint) const {
  const double long_way = apart(joint.from, joint.to);
  const FlatPoint along = unit(joint.to - joint.from);
  // The ground of a diamond and both its names.
  const TextBox ground = joint.upright
                             ? TextBox{{0, 0}, {1, 0}, 25.0, 5.0}
                             : TextBox{{kBesideReach - 5.0, 0}, {1, 0}, kBesideReach, 6.5};
  const double start = 6.0, end = joint.upright ? 6.0 : 2 * kBesideReach - 4.0;
  struct Spot {
    double at;
    std::size_t crossed;
    double off;
  };
  std::vector<Spot> free;
  for (double at = start; at <= long_way - end; at += kStep) {
    TextBox here = ground;
    here.middle = here.middle + joint.from + at * along;
    if (!is_taken(here)) free.push_back({at, crossings_.of(here), 0});
  }
  std::vector<FlatPoint> spots;
  for (const double share : {0.25, 0.75}) {
    for (Spot& spot : free) spot.off = std::abs(spot.at - share * long_way);
    const auto best = std::ranges::min_element(free, [](const Spot& a, const Spot& b) {
      return std::tie(a.crossed, a.off) < std::tie(b.crossed, b.off);
    });
    if (best == free.end() || (best->crossed > 0 && !spots.empty())) continue;
    const double at = best->at, apart_by = joint.upright ? 12.0 : 2 * kBesideReach;
    spots.push_back(joint.from + at * along);
    std::erase_if(free, [&](const Spot& s) { return std::abs(s.at - at) < apart_by; });
  }
  if (spots.empty()) spots.push_back(joint.from + 0.5 * long_way * along);
  return spots;
}

/// Beside its half of the diamond, as near as it lies over no ink; where the ink leaves no room for
/// "JOIN B2", then "B2".
TextMark Tiling::neighbour_name(const Joint& joint, FlatPoint diamond, bool on_before) const {
  const TileAt neighbour = on_before ? joint.after : joint.before;
  const std::string tile = tile_name(neighbour.column, neighbour.row);
  const Box room = cell(on_before ? joint.before : joint.after).grown(-kTextClear);
  const FlatPoint inward = joint.inward(on_before);
  TextMark best;
  double best_cost = std::numeric_limits<double>::infinity();
  for (const std::string& words : {"JOIN " + tile, tile}) {
    TextMark name{{}, words, kTextHeight};
    if (joint.upright) {
      name.at = diamond + (kDiamondDepth + 1.5) * inward - FlatPoint{0, 0.5 * kTextHeight};
      if (on_before) name.anchor = Anchor::Right;
    } else {
      name.at = diamond + FlatPoint{kDiamondHalf + 1.0, on_before ? 1.5 : -1.5 - kTextHeight};
    }
    const Settled settled = settle(name, room, kNameReach, kNameStep);
    if (settled.cost < best_cost) {
      best = settled.text;
      best_cost = settled.cost;
    }
    if (best_cost < kCrossed) break;
  }
  return best;
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
  const FlatPoint inward = joint.inward(before), half = kDiamondHalf * left_of(inward);
  for (const Joint::Diamond& diamond : joint.diamonds) {
    const FlatPoint at = diamond.middle;
    onto.fill(LineKind::Join, kBlack,
              {closed_path({at - half, at + kDiamondDepth * inward, at + half})});
    onto.text(before ? diamond.on_before : diamond.on_after);
  }
}

/// A second 100 mm scale, downwards, if the tile has room for it.
bool Tiling::draw_upright_scale(Drawing& onto, TileAt tile) const {
  constexpr double kLong = 100.0, kAcross = 11.0, kScaleStep = 4.0;
  const Box room = cell(tile).grown(-3.0);
  for (double x = room.lo.x; x + kAcross <= room.hi.x; x += kScaleStep)
    for (double y = room.lo.y; y + kLong <= room.hi.y; y += kScaleStep) {
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
      boxes.push_back(bounds(box_of(*text, labels)));
  return boxes;
}

/// A page off a roll is no longer than what is drawn, or its own words, need.
void cut_to_length(double& width, double& height, const Ink& ink, const TileOptions& options) {
  Box drawn;
  for (const Ink::Cluster& cluster : ink.clusters) drawn.cover(cluster.box);
  if (drawn.empty()) return;
  const double around = 2 * (options.margin_mm + kRollSlack) + options.overlap_mm;
  if (width > height)
    width = std::min(width, std::max(drawn.width(), kLeastRoll) + around);
  else
    height = std::min(
        height, drawn.height() + around + footer_height(width - 2 * options.margin_mm, options));
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
    double width = turned ? options.height_mm : options.width_mm;
    double height = turned ? options.width_mm : options.height_mm;
    if (options.roll) cut_to_length(width, height, ink, options);
    const double inside = width - 2 * margin;
    TileGrid grid =
        fewest_tiles(ink, whole, inside, height - 2 * margin - footer_height(inside, options),
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
    const Box strip{{margin, margin}, {margin + inside, margin + footer_height(inside, options)}};
    draw_footer(page.drawing, labels, strip, tiling.grid(), at.column, at.row, options);
    sheet.pages.push_back(std::move(page));
  }
  return sheet;
}

}  // namespace swathe
