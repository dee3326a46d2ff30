#include "stock/stepped.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace swathe {
namespace {

/// The outline in whole microns, its box's lower left corner at 0, 0: so that edges along and
/// across the roll are just that, however the piece was turned.
plane::Polygon in_microns(const plane::Polygon& outline) {
  const FlatPoint corner = bounds(outline).lo;
  plane::Polygon points;
  for (const FlatPoint p : outline)
    points.push_back({static_cast<double>(microns(p.x - corner.x)),
                      static_cast<double>(microns(p.y - corner.y))});
  return points;
}

/// Levels at which the outline has a corner, and levels between where an edge slants far.
std::vector<Micron> levels_of(const plane::Polygon& outline) {
  std::vector<Micron> levels;
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const FlatPoint a = outline[k], way = outline[(k + 1) % outline.size()] - a;
    const double slant = std::min(std::abs(way.x), std::abs(way.y));
    const int parts = std::max(1, static_cast<int>(std::ceil(slant / kStepMost)));
    for (int part = 0; part < parts; ++part)
      levels.push_back(std::llround(a.y + way.y * part / parts));
  }
  std::ranges::sort(levels);
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
  return levels;
}

std::vector<Step> steps_round(const plane::Polygon& outline) {
  const std::vector<Micron> levels = levels_of(outline);
  std::vector<Step> steps;
  for (std::size_t k = 0; k + 1 < levels.size(); ++k)
    steps.push_back({levels[k], levels[k + 1], std::numeric_limits<Micron>::max(), 0});
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const FlatPoint a = outline[k], b = outline[(k + 1) % outline.size()];
    for (Step& step : steps) {
      const double from = std::max(std::min(a.y, b.y), static_cast<double>(step.from_y));
      const double to = std::min(std::max(a.y, b.y), static_cast<double>(step.to_y));
      if (to <= from) continue;
      for (const double y : {from, to}) {
        const double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
        step.from_x = std::min(step.from_x, static_cast<Micron>(std::floor(x)));
        step.to_x = std::max(step.to_x, static_cast<Micron>(std::ceil(x)));
      }
    }
  }
  return steps;
}

/// Fills what is hollow between steps that reach further.
void fill_hollows(std::vector<Step>& steps) {
  std::vector<Step> below = steps, above = steps;
  for (std::size_t k = 1; k < steps.size(); ++k) {
    below[k].from_x = std::min(below[k].from_x, below[k - 1].from_x);
    below[k].to_x = std::max(below[k].to_x, below[k - 1].to_x);
  }
  for (std::size_t k = steps.size() - 1; k-- > 0;) {
    above[k].from_x = std::min(above[k].from_x, above[k + 1].from_x);
    above[k].to_x = std::max(above[k].to_x, above[k + 1].to_x);
  }
  for (std::size_t k = 0; k < steps.size(); ++k) {
    steps[k].from_x = std::max(below[k].from_x, above[k].from_x);
    steps[k].to_x = std::min(below[k].to_x, above[k].to_x);
  }
}

Step joined(const Step& a, const Step& b) {
  return {a.from_y, b.to_y, std::min(a.from_x, b.from_x), std::max(a.to_x, b.to_x)};
}

double area(const Step& step) {
  return static_cast<double>(step.to_y - step.from_y) *
         static_cast<double>(step.to_x - step.from_x);
}

/// Joins steps that are alike; then, while there are too many, the two that give away the least.
void join_steps(std::vector<Step>& steps) {
  while (steps.size() > 1) {
    std::size_t best = 0;
    double least = 1e300;
    for (std::size_t k = 0; k + 1 < steps.size(); ++k) {
      const double given =
          area(joined(steps[k], steps[k + 1])) - area(steps[k]) - area(steps[k + 1]);
      if (given < least) {
        least = given;
        best = k;
      }
    }
    if (least > 0 && steps.size() <= kMostSteps) return;
    steps[best] = joined(steps[best], steps[best + 1]);
    steps.erase(steps.begin() + static_cast<std::ptrdiff_t>(best) + 1);
  }
}

}  // namespace

Micron microns(double mm) { return std::llround(mm * static_cast<double>(kMicronsPerMm)); }

SteppedShape stepped(const plane::Polygon& outline) {
  const plane::Polygon points = in_microns(outline);
  const plane::Box box = bounds(points);
  SteppedShape shape{steps_round(points), std::llround(box.hi.x), std::llround(box.hi.y)};
  assert(!shape.steps.empty());
  fill_hollows(shape.steps);
  join_steps(shape.steps);
  return shape;
}

}  // namespace swathe
