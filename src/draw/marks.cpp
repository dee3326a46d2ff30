#include "draw/marks.hpp"

#include <numbers>

#include "base/maths.hpp"
#include "rules/practice.hpp"

namespace swathe {
namespace {

constexpr double kHeadLength = 3.5, kHeadHalf = 1.3, kShaftHalf = 0.25;
constexpr double kUnderArrow = 9.0;  ///< length of a pleat's arrows
constexpr double kCrownRise = 1.5;   ///< a staple's legs, either side of the line
constexpr double kTriangleHalf = 4.0, kTriangleHeight = 7.0;
constexpr double kCornerSquare = 1.5;  ///< half a side
constexpr double kTick = 2.5;          ///< half a dimension's tick
// Of a place to lay a digit on, which nobody cuts along: finer detail would not be seen.
constexpr double kPlaceFlatness = 0.05;

}  // namespace

plane::Polygon arrow_head(FlatPoint tip, FlatPoint way) {
  const FlatPoint along = unit(way), across = left_of(along);
  const FlatPoint root = tip - kHeadLength * along;
  return {tip, root + kHeadHalf * across, root - kHeadHalf * across};
}

plane::Polygon arrow(FlatPoint tail, FlatPoint tip) {
  const FlatPoint along = unit(tip - tail), across = left_of(along);
  const FlatPoint root = tip - kHeadLength * along;
  return {tail - kShaftHalf * across, root - kShaftHalf * across, root - kHeadHalf * across, tip,
          root + kHeadHalf * across,  root + kShaftHalf * across, tail + kShaftHalf * across};
}

void draw_staple(Drawing& onto, FlatPoint at, bool upright) {
  const FlatPoint along = upright ? FlatPoint{0, 1} : FlatPoint{1, 0};
  const FlatPoint across = left_of(along);
  const FlatPoint half = 0.5 * practice::kStapleCrown.mm() * along, leg = kCrownRise * across;
  onto.line(LineKind::Staple,
            plane::open_path({at - half - leg, at - half + leg, at + half + leg, at + half - leg}));
}

void draw_punch(Drawing& onto, FlatPoint at, double radius) {
  const double arm = radius + 2.0;
  onto.line(LineKind::Punch, circle(at, radius));
  onto.line(LineKind::Punch, at - FlatPoint{arm, 0}, at + FlatPoint{arm, 0});
  onto.line(LineKind::Punch, at - FlatPoint{0, arm}, at + FlatPoint{0, arm});
}

void draw_match(Drawing& onto, FlatPoint at, bool points_down, double size) {
  const double rise = size * (points_down ? -kTriangleHeight : kTriangleHeight);
  const FlatPoint half{size * kTriangleHalf, 0};
  plane::Polygon triangle = {at - half, at + half, at + FlatPoint{0, rise}};
  if (area(triangle) < 0) std::swap(triangle[0], triangle[1]);
  onto.fill(LineKind::Match, kBlack, {closed_path(triangle)});
}

void draw_window(Drawing& onto, const plane::Path& window) {
  onto.line(LineKind::CutLast, window);
  const plane::Box box = bounds(window);
  for (const FlatPoint p :
       {box.lo, FlatPoint{box.hi.x, box.lo.y}, box.hi, FlatPoint{box.lo.x, box.hi.y}})
    draw_window_corner(onto, p);
}

void draw_window_corner(Drawing& onto, FlatPoint at) {
  const FlatPoint half{kCornerSquare, kCornerSquare};
  onto.line(LineKind::Thin, rectangle(at - half, at + half));
}

void draw_half_diamond(Drawing& onto, FlatPoint at, FlatPoint inward, double size) {
  constexpr double kHollow = 0.6;  // of it is white: solid triangles on a pattern are match marks
  const FlatPoint half = size * kDiamondHalf * left_of(inward);
  const plane::Polygon outer = {at - half, at + size * kDiamondDepth * inward, at + half};
  const FlatPoint middle = at + (size * kDiamondDepth / 3) * inward;
  plane::Polygon inner;
  for (const FlatPoint p : outer) inner.insert(inner.begin(), middle + kHollow * (p - middle));
  onto.fill(LineKind::Join, kBlack, {closed_path(outer), closed_path(inner)});
}

void draw_scale_line(Drawing& onto, FlatPoint from, FlatPoint to) {
  const FlatPoint half = 0.5 * kScaleTick * left_of(unit(to - from));
  onto.line(LineKind::Scale, from, to);
  for (const FlatPoint end : {from, to}) onto.line(LineKind::Scale, end - half, end + half);
}

OnPath along_path(const plane::Path& path, double share) {
  const std::vector<FlatPoint> points = flatten(path, 0.05);
  double left = share * length(open_path(points));
  for (std::size_t k = 0; k + 1 < points.size(); ++k) {
    const double step = apart(points[k], points[k + 1]);
    if (step > 0 && (left <= step || k + 2 == points.size())) {
      const FlatPoint along = unit(points[k + 1] - points[k]);
      return {points[k] + std::min(left, step) * along, along};
    }
    left -= step;
  }
  return {points.empty() ? FlatPoint{} : points.front(), {1, 0}};
}

void draw_pleat(Drawing& onto, const plane::Path& fold, FlatPoint under) {
  onto.line(LineKind::Fold, fold);
  // Off the very ends: at the front both folds of a corner meet in a point, at the back the cloth
  // is cut.
  for (const double share : {0.45, 0.9}) {
    const OnPath on = along_path(fold, share);
    onto.fill(LineKind::Fold, kBlack, {closed_path(arrow(on.at, on.at + kUnderArrow * under))});
  }
}

void draw_numeral(Drawing& onto, const plane::Region& outline) {
  std::vector<plane::Path> paths;
  for (const plane::Polygon& contour : outline)
    paths.push_back(closed_path(thinned(contour, kPlaceFlatness)));
  onto.fill(LineKind::Numeral, kTint, paths);
  for (plane::Path& path : paths) onto.line(LineKind::Numeral, std::move(path));
}

void draw_dimension(Drawing& onto, FlatPoint a, FlatPoint b, const std::string& words,
                    double height_mm) {
  const FlatPoint along = unit(b - a), across = left_of(along);
  onto.line(LineKind::Thin, a, b);
  for (const FlatPoint p : {a, b})
    onto.line(LineKind::Thin, p - kTick * across, p + kTick * across);
  onto.fill(LineKind::Thin, kBlack,
            {closed_path(arrow_head(b, along)), closed_path(arrow_head(a, -1.0 * along))});
  onto.text(0.5 * (a + b) + 0.5 * height_mm * across, words, height_mm, draw::Anchor::Middle,
            maths::atan2(along.y, along.x));
}

}  // namespace swathe
