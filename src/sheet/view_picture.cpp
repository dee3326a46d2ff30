#include "sheet/view_picture.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sheet/shown_subjects.hpp"

namespace swathe {
namespace {

constexpr LineKind kLayer = LineKind::Outline;  // one for all, so that near things cover far ones
constexpr int kBendColumns = 3;                 // of half a bent corner
constexpr double kSpan = 6.0;                   // mm of cloth between bends of a digit's edge
constexpr double kLap = 2.0;                    // mm a leg runs on past its mitre
constexpr double kStepDown = 1e-4;              // mm of cloth from a board on to padding alone
constexpr double kThin = 0.3;                   // mm a digit's outline may stray
constexpr double kFloor = 0.93;
constexpr double kDarkest = 0.28, kLightest = 0.74;  // of the boards' backs
constexpr double kMostShade = 0.45;                  // of the cloth, away from the light

Color gray(double share) { return {share, share, share}; }

/// How light a color prints in gray. Source: Rec. ITU-R BT.601-7, section 2.5.1.
double lightness(const Color& color) {
  return 0.299 * color.red + 0.587 * color.green + 0.114 * color.blue;
}

/// Something drawn as a whole, far things first.
struct Part {
  double distance = 0;
  std::vector<ViewArea> areas;
  Subjects shows{};  ///< where an area shows nothing of its own
};

class Picture {
 public:
  Picture(const Made& made, const sight::Scene& scene, const SpacePoint& eye, std::size_t color,
          const ViewDetail& detail)
      : made_(made),
        scene_(scene),
        eye_(eye),
        cloth_(made.job.cloth.colors[color].srgb),
        detail_(detail),
        camera_(eye, view_middle(made)) {
    // Light comes from over the observer's left shoulder.
    const SpacePoint middle = view_middle(made);
    const FlatPoint back = unit(FlatPoint{eye.x - middle.x, eye.y - middle.y});
    const FlatPoint left = -1.0 * left_of(back);
    light_ = unit(SpacePoint{0.55 * back.x + 0.45 * left.x, 0.55 * back.y + 0.45 * left.y, 0.7});
  }

  /// From the farthest on, each with what it shows.
  std::vector<ViewArea> areas() && {
    floor();
    for (std::size_t b = 0; b < made_.wraps.size(); ++b)
      for (std::size_t leg = 0; leg < made_.wraps[b].run().sides.size(); ++leg) bumper(b, leg);
    for (const sight::Solid& solid : scene_.solids)
      if (solid.name.starts_with("blind")) blind(solid);
    std::ranges::stable_sort(parts_, [](const Part& a, const Part& b) {
      return std::round(a.distance * 1e3) > std::round(b.distance * 1e3);
    });
    std::vector<ViewArea> all;
    for (Part& part : parts_)
      for (ViewArea& area : part.areas) {
        if (area.fill.shows.empty()) area.fill.shows = part.shows;
        all.push_back(std::move(area));
      }
    return all;
  }

 private:
  bool faces(const SpacePoint& normal, const SpacePoint& at) const {
    return dot(normal, eye_ - at) > 0.0;
  }
  Color shade(const SpacePoint& normal) const {
    return gray(kDarkest + (kLightest - kDarkest) * lit(normal));
  }

  double lit(const SpacePoint& normal) const { return std::max(0.0, dot(normal, light_)); }
  /// The cover's own color. Where it lies in the shade it moves away from the digits' color, so
  /// that they stand out from it at least as they do in the light, in gray too.
  Color cloth(const SpacePoint& normal) const {
    const Color own = cloth_, digits = made_.job.numerals.color;
    const double away = kMostShade * (1 - lit(normal));
    const double toward = lightness(digits) > lightness(own) ? 0.0 : 1.0;
    const auto mixed = [&](double part) { return part + away * (toward - part); };
    return {mixed(own.red), mixed(own.green), mixed(own.blue)};
  }

  plane::Path outline_of(const std::vector<SpacePoint>& points) const {
    std::vector<FlatPoint> flat;
    for (const SpacePoint& p : points) flat.push_back(camera_.at(p));
    plane::Path path = open_path(flat);
    path.closed = true;
    return path;
  }
  ViewArea filled(ViewPart part, const std::vector<SpacePoint>& points, Color color) const {
    return {part, {kLayer, color, {outline_of(points)}, {}}};
  }

  void floor() {
    std::vector<SpacePoint> points;
    for (const FrameSide& side : made_.frame.sides())
      points.push_back({side.from.x, side.from.y, 0});
    parts_.push_back({1e300, {filled(ViewPart::Floor, points, gray(kFloor))}, Subject::frame()});
  }

  /// Heights on the girth between the back edges at which tints change.
  std::vector<double> rows() const {
    const Section& section = made_.section;
    return section.heights(section.back_edge_bottom(), section.back_edge_top(),
                           0.5 * std::numbers::pi / detail_.bands);
  }

  /// The same round padding alone, from the middle of its back over the front to there again.
  std::vector<double> bare_rows() const {
    return made_.section.bare_heights(0.5 * std::numbers::pi / detail_.bands);
  }

  /// How long padding runs on past the board at that end of a leg.
  static double bare(const Wrap& wrap, std::size_t leg, bool start) {
    return leg == (start ? 0 : wrap.run().sides.size() - 1) ? wrap.run().bare(start) : 0.0;
  }

  /// Places along a leg with a board behind it at one height, left to right: its two ends, and the
  /// steps of bends.
  static std::vector<double> columns(const Wrap& wrap, std::size_t leg, double u) {
    const auto& corners = wrap.run().corners;
    LevelLine on = wrap.level(leg, u);
    if (bare(wrap, leg, true) > 0.0) on.from = wrap.run().bare(true);
    if (bare(wrap, leg, false) > 0.0) on.to = wrap.run().length - wrap.run().bare(false);
    if (corners.empty() || !corners.front().rounded()) return {on.from, on.to};
    std::vector<double> columns;
    for (int k = 0; k <= kBendColumns; ++k)
      columns.push_back(on.from + on.arc_before * k / kBendColumns);
    for (int k = kBendColumns; k >= 0; --k)
      columns.push_back(on.to - on.arc_after * k / kBendColumns);
    return columns;
  }

  static const FrameSide& side_of(const Wrap& wrap, std::size_t leg) {
    return wrap.frame().sides()[static_cast<std::size_t>(wrap.run().sides[leg].side)];
  }

  /// Rows of places on a cover, a row for each height.
  using Grid = std::vector<std::vector<SpacePoint>>;

  void bumper(std::size_t number, std::size_t leg) {
    const Wrap& wrap = made_.wraps[number];
    const FrameSide& side = side_of(wrap, leg);
    Part part;
    part.shows = {Subject::bumper(wrap.run().name), Subject::side(side.name)};
    Grid grid;
    for (const double u : rows()) {
      auto& row = grid.emplace_back();
      for (const double s : columns(wrap, leg, u))
        row.push_back(wrap.at({s, u}).value_or(SpacePoint{}));
      lap_corners(row, wrap, leg, u);
    }
    // Padding alone: an end that the eye looks at lies before the rest, the other behind it.
    std::vector<ViewArea> near;
    SpacePoint ends[] = {grid[grid.size() / 2].front(), grid[grid.size() / 2].back()};
    for (const bool start : {true, false}) {
      const double length = bare(wrap, leg, start);
      if (length <= 0.0) continue;
      const double sense = start ? -1.0 : 1.0;
      const SpacePoint out{sense * side.along.x, sense * side.along.y, 0};
      const double board = start ? length : wrap.run().length - length;
      const bool looked_at = faces(out, wrap.at({board, 0}).value_or(SpacePoint{}));
      padding_alone(looked_at ? near : part.areas, wrap, start, out);
      ends[start ? 0 : 1] = wrap.at({start ? 0.0 : wrap.run().length, rows()[grid.size() / 2]})
                                .value_or(SpacePoint{});
    }
    part.distance = apart(eye_, 0.5 * (ends[0] + ends[1]));
    inside_face(part.areas, grid, side);
    all_columns(part.areas, grid);
    if (leg == 0) end_face(part.areas, grid, 0, -1.0 * side.along);
    if (leg + 1 == wrap.run().sides.size())
      end_face(part.areas, grid, grid.front().size() - 1, side.along);
    part.areas.insert(part.areas.end(), near.begin(), near.end());
    digits(part, number, leg);
    parts_.push_back(std::move(part));
  }

  /// The cover of padding that runs on past the board at one end, and its end.
  void padding_alone(std::vector<ViewArea>& areas, const Wrap& wrap, bool start,
                     const SpacePoint& out) const {
    const double length = wrap.run().length;
    const double board =
        start ? wrap.run().bare(true) - kStepDown : length - wrap.run().bare(false) + kStepDown;
    const double from = start ? 0.0 : board, to = start ? board : length;
    Grid grid;
    for (const double u : bare_rows()) {
      auto& row = grid.emplace_back();
      for (const double s : {from, to}) row.push_back(wrap.at({s, u}).value_or(SpacePoint{}));
    }
    all_columns(areas, grid);
    end_face(areas, grid, start ? 0 : 1, {out.x, out.y});
  }

  void all_columns(std::vector<ViewArea>& areas, const Grid& grid) const {
    const std::vector<SpacePoint>& middle = grid[grid.size() / 2];
    for (std::size_t c = 0; c + 1 < middle.size(); ++c)
      if (middle.size() == 2 || apart(middle[c], middle[c + 1]) >= 1e-6) column(areas, grid, c);
  }

  /// A leg runs on a little into its neighbors: no light shows through the mitre.
  static void lap_corners(std::vector<SpacePoint>& row, const Wrap& wrap, std::size_t leg,
                          double u) {
    const Section& section = wrap.section();
    const double by = std::min(kLap, section.depth_mm() - section.at(u).d);
    const FlatPoint along =
        wrap.frame().sides()[static_cast<std::size_t>(wrap.run().sides[leg].side)].along;
    const auto lap = [&](SpacePoint& p, double on) {
      p.x += on * along.x;
      p.y += on * along.y;
    };
    if (leg > 0) lap(row.front(), -by);
    if (leg < wrap.run().corners.size()) lap(row.back(), by);
  }

  /// Bands of one column, each drawn on towards the column's top and covered by those above it, as
  /// far as all of them are seen: no seam shows between two tints.
  void column(std::vector<ViewArea>& areas, const Grid& grid, std::size_t c) const {
    std::vector<std::size_t> seen;
    std::vector<SpacePoint> normals;
    for (std::size_t r = 0; r + 1 < grid.size(); ++r) {
      SpacePoint out = cross(grid[r][c + 1] - grid[r][c], grid[r + 1][c] - grid[r][c]);
      if (norm(out) > 0.0) out = unit(out);
      if (!faces(out, grid[r][c])) continue;
      seen.push_back(r);
      normals.push_back(out);
    }
    for (std::size_t k = 0; k < seen.size(); ++k) {
      std::size_t top = k;
      while (top < k + detail_.under && top + 1 < seen.size() && seen[top + 1] == seen[top] + 1)
        ++top;
      const std::size_t last = seen[top] + 1;
      std::vector<SpacePoint> round;
      for (std::size_t r = seen[k]; r <= last; ++r) round.push_back(grid[r][c + 1]);
      for (std::size_t r = last + 1; r-- > seen[k];) round.push_back(grid[r][c]);
      areas.push_back(filled(ViewPart::Cloth, round, cloth(normals[k])));
    }
  }

  /// The back of the boards.
  void inside_face(std::vector<ViewArea>& areas, const Grid& grid, const FrameSide& side) const {
    const SpacePoint in{-side.outward.x, -side.outward.y, 0};
    const std::vector<SpacePoint>&low = grid.front(), &high = grid.back();
    if (!faces(in, low.front())) return;
    areas.push_back(
        filled(ViewPart::Back, {low.front(), low.back(), high.back(), high.front()}, shade(in)));
  }

  void end_face(std::vector<ViewArea>& areas, const Grid& grid, std::size_t column,
                FlatPoint out) const {
    std::vector<SpacePoint> round;
    for (const std::vector<SpacePoint>& row : grid) round.push_back(row[column]);
    const SpacePoint way{out.x, out.y, 0};
    if (faces(way, round.front())) areas.push_back(filled(ViewPart::Cloth, round, cloth(way)));
  }

  void digits(Part& part, std::size_t number, std::size_t leg) const {
    const Wrap& wrap = made_.wraps[number];
    for (std::size_t n = 0; n < scene_.numbers.size(); ++n) {
      const NumberInSpace& on = scene_.numbers[n];
      const Subjects shows = showing_subject(made_, n);
      for (std::size_t d = 0; d < on.boxes.size(); ++d) {
        const SightDigit& box = on.boxes[d];
        if (box.bumper != static_cast<int>(number) ||
            wrap.side_of(0.5 * (box.from_s + box.to_s)) != static_cast<int>(leg) ||
            !faces(on.digits[d].normal, on.digits[d].middle))
          continue;
        const Digit& shape = made_.numerals->shape(box.digit);
        const plane::Box ink = bounds(shape.outline);
        const FlatPoint move{box.from_s - ink.lo.x, box.from_u - ink.lo.y};
        if (shape.white) digit(part, wrap, shape.white->outline, move, {{1, 1, 1}, shows});
        digit(part, wrap, shape.outline, move, {made_.job.numerals.color, shows});
      }
    }
  }

  struct Paint {
    Color color;
    Subjects shows;
  };

  /// A digit's outline taken through the wrap, point by point.
  void digit(Part& part, const Wrap& wrap, const plane::Region& region, FlatPoint move,
             const Paint& paint) const {
    FillMark fill{kLayer, paint.color, {}, paint.shows};
    for (const plane::Polygon& polygon : region) {
      const plane::Polygon outline = thinned(polygon, kThin);
      std::vector<SpacePoint> points;
      for (std::size_t k = 0; k < outline.size(); ++k) {
        const FlatPoint a = outline[k] + move, b = outline[(k + 1) % outline.size()] + move;
        // Straight along the bumper stays straight; up and down it bends over the rounds.
        const bool flat = std::max(std::abs(a.y), std::abs(b.y)) <= wrap.section().front_flat_top();
        const int steps = flat ? 1 : std::max(1, static_cast<int>(std::abs(b.y - a.y) / kSpan));
        for (int i = 0; i < steps; ++i) {
          const FlatPoint p = a + (static_cast<double>(i) / steps) * (b - a);
          if (const auto at = wrap.at({p.x, p.y})) points.push_back(*at);
        }
      }
      if (points.size() > 2) fill.outlines.push_back(outline_of(points));
    }
    if (!fill.outlines.empty()) part.areas.push_back({ViewPart::Digit, std::move(fill)});
  }

  void blind(const sight::Solid& solid) {
    Part part;
    part.shows = subject_of(solid);
    const plane::Polygon &low = solid.levels.front().plan, &high = solid.levels.back().plan;
    const double z0 = solid.bottom(), z1 = solid.top();
    FlatPoint middle{};
    for (const FlatPoint p : low) middle = middle + (1.0 / static_cast<double>(low.size())) * p;
    part.distance = apart(eye_, {middle.x, middle.y, 0.5 * (z0 + z1)});
    const auto face = [&](const std::vector<SpacePoint>& round, const SpacePoint& out) {
      if (!faces(out, round.front())) return;
      // A dark rim round a light face tells what hides a number from cloth.
      part.areas.push_back(filled(ViewPart::Blind, round, gray(0.2)));
      SpacePoint center{};
      for (const SpacePoint& p : round) center = center + 0.25 * p;
      std::vector<SpacePoint> within;
      for (const SpacePoint& p : round) {
        const SpacePoint in = center - p;
        within.push_back(p + std::min(0.5, 8.0 / norm(in)) * in);
      }
      part.areas.push_back(filled(ViewPart::Blind, within, gray(0.85 + 0.12 * out.z)));
    };
    for (std::size_t k = 0; k < low.size(); ++k) {
      const std::size_t n = (k + 1) % low.size();
      const FlatPoint out = -1.0 * left_of(unit(low[n] - low[k]));
      face({{low[k].x, low[k].y, z0},
            {low[n].x, low[n].y, z0},
            {high[n].x, high[n].y, z1},
            {high[k].x, high[k].y, z1}},
           {out.x, out.y, 0});
    }
    std::vector<SpacePoint> lid;
    for (const FlatPoint p : high) lid.push_back({p.x, p.y, z1});
    face(lid, {0, 0, 1});
    parts_.push_back(std::move(part));
  }

  const Made& made_;
  const sight::Scene& scene_;
  SpacePoint eye_, light_;
  Color cloth_;
  ViewDetail detail_;
  Camera camera_;
  std::vector<Part> parts_;
};

}  // namespace

SpacePoint view_middle(const Made& made) {
  const FlatPoint center = made.frame.center();
  return {center.x, center.y, made.frame.floor_gap().mm() + 0.5 * made.section.height_mm()};
}

std::vector<ViewArea> view_areas(const Made& made, const sight::Scene& scene, const SpacePoint& eye,
                                 std::size_t color, const ViewDetail& detail) {
  return Picture(made, scene, eye, color, detail).areas();
}

void draw_view(Drawing& onto, const plane::Box& box, const Made& made, const SpacePoint& eye) {
  std::vector<ViewArea> areas = view_areas(made, made.sight->scene, eye, 0);
  plane::Box seen;
  for (const ViewArea& area : areas)
    for (const plane::Path& path : area.fill.outlines)
      for (const plane::Vertex& vertex : path.vertices) seen.cover(vertex.at);
  const double scale = std::min(box.width() / seen.width(), box.height() / seen.height());
  const FlatPoint move = box.middle() - scale * seen.middle();
  for (ViewArea& area : areas) {
    for (plane::Path& path : area.fill.outlines)
      for (plane::Vertex& vertex : path.vertices) vertex.at = scale * vertex.at + move;
    const Showing one(onto, area.fill.shows);
    onto.fill(area.fill.kind, area.fill.color, std::move(area.fill.outlines));
  }
}

}  // namespace swathe
