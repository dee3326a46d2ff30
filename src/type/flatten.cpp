#include "type/flatten.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace swathe {
namespace {

FlatPoint cubic_at(FlatPoint p, const type::Curve& c, double t) {
  const double s = 1 - t;
  return s * s * s * p + 3 * s * s * t * c.a + 3 * s * t * t * c.b + t * t * t * c.to;
}

/// Steps of equal t that keep every chord within `tolerance`: a chord strays by at most
/// |B''| / (8 n^2), and |B''| is greatest at an end.
/// Source: Filip, Magedson, Markot: Surface algorithms using bounds on derivatives, CAGD 3 (1986).
int steps(FlatPoint p, const type::Curve& c, double tolerance) {
  const double bend = 6 * std::max(norm(p - 2 * c.a + c.b), norm(c.a - 2 * c.b + c.to));
  constexpr double kMost = 1000;
  return static_cast<int>(std::clamp(std::ceil(std::sqrt(bend / (8 * tolerance))), 1.0, kMost));
}

}  // namespace

plane::Region flatten(const std::vector<type::Curve>& curves, double tolerance) {
  plane::Region region;
  plane::Polygon polygon;
  const auto finish = [&] {
    if (polygon.size() > 1 && polygon.front() == polygon.back()) polygon.pop_back();
    if (polygon.size() > 2) region.push_back(std::move(polygon));
    polygon.clear();
  };
  for (const type::Curve& curve : curves) {
    switch (curve.verb) {
      case type::Curve::Verb::Move:
        finish();
        polygon.push_back(curve.to);
        break;
      case type::Curve::Verb::Line:
        polygon.push_back(curve.to);
        break;
      case type::Curve::Verb::Cubic: {
        const FlatPoint from = polygon.back();
        const int n = steps(from, curve, tolerance);
        for (int i = 1; i < n; ++i) {
          polygon.push_back(cubic_at(from, curve, static_cast<double>(i) / n));
        }
        polygon.push_back(curve.to);
        break;
      }
      case type::Curve::Verb::Close:
        finish();
        break;
    }
  }
  finish();
  return region;
}

std::size_t count_flattened(const std::vector<type::Curve>& curves, double tolerance) {
  std::size_t points = 0;
  FlatPoint at;
  for (const type::Curve& curve : curves) {
    if (curve.verb == type::Curve::Verb::Close) continue;
    points += curve.verb == type::Curve::Verb::Cubic
                  ? static_cast<std::size_t>(steps(at, curve, tolerance))
                  : std::size_t{1};
    at = curve.to;
  }
  return points;
}

}  // namespace swathe
