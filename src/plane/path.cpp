#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "base/maths.hpp"
#include "swathe/plane.hpp"

namespace swathe::plane {

FlatPoint direction(double radians) { return {maths::cos(radians), maths::sin(radians)}; }

namespace {

constexpr double kPi = std::numbers::pi;

/// Calls visit(from, to, bulge) for every edge.
template <class Visit>
void each_edge(const Path& path, Visit visit) {
  const std::size_t n = path.vertices.size();
  if (n < 2) return;
  for (std::size_t i = 0; i + (path.closed ? 0 : 1) < n; ++i) {
    const Vertex& v = path.vertices[i];
    visit(v.at, path.vertices[(i + 1) % n].at, v.bulge);
  }
}

int winding(const Polygon& polygon, FlatPoint p, bool& on_edge) {
  int turns = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const FlatPoint a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    const double side = cross(b - a, p - a);
    if (side == 0.0 && dot(a - p, b - p) <= 0.0) on_edge = true;
    if (a.y <= p.y && b.y > p.y && side > 0) ++turns;
    if (a.y > p.y && b.y <= p.y && side < 0) --turns;
  }
  return turns;
}

bool segments_cross(FlatPoint a, FlatPoint b, FlatPoint c, FlatPoint d) {
  // Segments far apart on one line have sides that are rounding noise: their boxes decide.
  if (std::max(a.x, b.x) < std::min(c.x, d.x) || std::max(c.x, d.x) < std::min(a.x, b.x) ||
      std::max(a.y, b.y) < std::min(c.y, d.y) || std::max(c.y, d.y) < std::min(a.y, b.y))
    return false;
  const double c_side = cross(b - a, c - a), d_side = cross(b - a, d - a);
  const double a_side = cross(d - c, a - c), b_side = cross(d - c, b - c);
  if (((c_side > 0) != (d_side > 0)) && ((a_side > 0) != (b_side > 0)) && c_side != 0 &&
      d_side != 0 && a_side != 0 && b_side != 0)
    return true;
  const auto within = [](FlatPoint p, FlatPoint q, FlatPoint r, double side) {
    return side == 0.0 && dot(p - r, q - r) <= 0.0;
  };
  return within(a, b, c, c_side) || within(a, b, d, d_side) || within(c, d, a, a_side) ||
         within(c, d, b, b_side);
}

}  // namespace

Arc arc_of(FlatPoint from, FlatPoint to, double bulge) {
  if (bulge == 0.0) return {};
  const double angle = 4.0 * maths::atan(bulge);
  const FlatPoint chord = to - from;
  const double apothem = 0.5 * (1.0 - bulge * bulge) / (2.0 * bulge);
  const FlatPoint center = 0.5 * (from + to) + apothem * left_of(chord);
  return {angle, center, apart(center, from)};
}

Path open_path(const std::vector<FlatPoint>& points) {
  Path path;
  path.vertices.reserve(points.size());
  for (const FlatPoint p : points) path.vertices.push_back({p});
  return path;
}

Path closed_path(const Polygon& points) {
  Path path = open_path(points);
  path.closed = true;
  return path;
}

Path line(FlatPoint a, FlatPoint b) { return open_path({a, b}); }

Path rectangle(FlatPoint lo, FlatPoint hi) {
  return closed_path({lo, {hi.x, lo.y}, hi, {lo.x, hi.y}});
}

Path rounded_rectangle(FlatPoint lo, FlatPoint hi, double radius) {
  const double r = std::min({radius, 0.5 * (hi.x - lo.x), 0.5 * (hi.y - lo.y)});
  if (r <= 0.0) return rectangle(lo, hi);
  const double quarter = maths::tan(kPi / 8.0);
  return {{{{lo.x + r, lo.y}, 0},
           {{hi.x - r, lo.y}, quarter},
           {{hi.x, lo.y + r}, 0},
           {{hi.x, hi.y - r}, quarter},
           {{hi.x - r, hi.y}, 0},
           {{lo.x + r, hi.y}, quarter},
           {{lo.x, hi.y - r}, 0},
           {{lo.x, lo.y + r}, quarter}},
          true};
}

Path circle(FlatPoint center, double radius) {
  return {{{{center.x + radius, center.y}, 1.0}, {{center.x - radius, center.y}, 1.0}}, true};
}

std::vector<FlatPoint> flatten(const Path& path, double tolerance) {
  std::vector<FlatPoint> points;
  if (!path.vertices.empty()) points.push_back(path.vertices.front().at);
  each_edge(path, [&](FlatPoint from, FlatPoint to, double bulge) {
    if (const Arc arc = arc_of(from, to, bulge); arc.angle != 0.0) {
      const double reach = std::max(0.0, 1.0 - tolerance / arc.radius);
      const double step = std::max(2.0 * maths::acos(std::min(1.0, reach)), 1e-3);
      const int chords = std::max(1, static_cast<int>(std::ceil(std::abs(arc.angle) / step)));
      const double start = maths::atan2(from.y - arc.center.y, from.x - arc.center.x);
      for (int k = 1; k < chords; ++k)
        points.push_back(arc.center + arc.radius * direction(start + arc.angle * k / chords));
    }
    points.push_back(to);
  });
  if (path.closed && points.size() > 1) points.pop_back();
  return points;
}

double length(const Path& path) {
  double sum = 0.0;
  each_edge(path, [&](FlatPoint from, FlatPoint to, double bulge) {
    const Arc arc = arc_of(from, to, bulge);
    sum += arc.angle == 0.0 ? apart(from, to) : std::abs(arc.angle) * arc.radius;
  });
  return sum;
}

Box bounds(const Path& path) {
  Box box;
  for (const Vertex& v : path.vertices) box.cover(v.at);
  each_edge(path, [&](FlatPoint from, FlatPoint to, double bulge) {
    const Arc arc = arc_of(from, to, bulge);
    if (arc.angle == 0.0) return;
    const double start = maths::atan2(from.y - arc.center.y, from.x - arc.center.x);
    const double lo = std::min(start, start + arc.angle), hi = std::max(start, start + arc.angle);
    const int first = static_cast<int>(std::ceil(lo / (kPi / 2)));
    for (int quarter = first; quarter * kPi / 2 <= hi; ++quarter)
      box.cover(arc.center + arc.radius * direction(quarter * kPi / 2));
  });
  return box;
}

Box bounds(const Polygon& points) {
  Box box;
  for (const FlatPoint p : points) box.cover(p);
  return box;
}

Box bounds(const Region& region) {
  Box box;
  for (const Polygon& polygon : region) box.cover(bounds(polygon));
  return box;
}

FlatPoint Placement::operator()(FlatPoint p) const {
  if (mirrored) p.x = -p.x;
  if (turn != 0.0) {
    const FlatPoint along = direction(turn);
    p = p.x * along + p.y * left_of(along);
  }
  return p + move;
}

Path Placement::operator()(const Path& path) const {
  Path placed = path;
  for (Vertex& v : placed.vertices) v = {(*this)(v.at), mirrored ? -v.bulge : v.bulge};
  return placed;
}

Polygon Placement::operator()(const Polygon& polygon) const {
  Polygon placed;
  placed.reserve(polygon.size());
  for (const FlatPoint p : polygon) placed.push_back((*this)(p));
  if (mirrored) std::ranges::reverse(placed);
  return placed;
}

double area(const Polygon& polygon) {
  double twice = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i)
    twice += cross(polygon[i] - polygon[0], polygon[(i + 1) % polygon.size()] - polygon[0]);
  return 0.5 * twice;
}

double area(const Region& region) {
  double sum = 0.0;
  for (const Polygon& polygon : region) sum += area(polygon);
  return sum;
}

bool is_simple(const Polygon& polygon) {
  const std::size_t n = polygon.size();
  if (n < 3) return false;
  for (std::size_t i = 0; i < n; ++i) {
    const FlatPoint a = polygon[i], b = polygon[(i + 1) % n];
    if (a == b) return false;
    for (std::size_t j = i + 1; j < n; ++j) {
      const FlatPoint c = polygon[j], d = polygon[(j + 1) % n];
      const bool follows = j == i + 1, precedes = i == 0 && j == n - 1;
      if (follows || precedes) {  // neighbors share a point; they may not fold back on each other
        const FlatPoint out = follows ? a - b : b - a, on = follows ? d - b : c - a;
        if (cross(out, on) == 0.0 && dot(out, on) > 0.0) return false;
      } else if (segments_cross(a, b, c, d)) {
        return false;
      }
    }
  }
  return true;
}

Polygon thinned(const Polygon& polygon, double tolerance) {
  const std::size_t n = polygon.size();
  if (n < 4) return polygon;
  std::vector<char> kept(n + 1, 0);  // the last is the first again
  const auto at = [&](std::size_t k) { return polygon[k % n]; };
  const auto square_away = [&](std::size_t k, std::size_t from, std::size_t to) {
    const FlatPoint way = at(to) - at(from), p = at(k) - at(from);
    const double square = dot(way, way);
    const double share = square > 0 ? std::clamp(dot(p, way) / square, 0.0, 1.0) : 0.0;
    const FlatPoint off = p - share * way;
    return dot(off, off);
  };
  kept[0] = kept[n] = 1;
  std::vector<std::pair<std::size_t, std::size_t>> open = {{0, n}};
  while (!open.empty()) {
    const auto [from, to] = open.back();
    open.pop_back();
    std::size_t furthest = from;
    double most = tolerance * tolerance;
    for (std::size_t k = from + 1; k < to; ++k)
      if (const double off = square_away(k, from, to); off > most) {
        most = off;
        furthest = k;
      }
    if (furthest == from) continue;
    kept[furthest] = 1;
    open.emplace_back(from, furthest);
    open.emplace_back(furthest, to);
  }
  Polygon thin;
  for (std::size_t k = 0; k < n; ++k)
    if (kept[k]) thin.push_back(polygon[k]);
  return thin.size() < 3 ? polygon : thin;
}

bool contains(const Region& region, FlatPoint p) {
  int turns = 0;
  bool on_edge = false;
  for (const Polygon& polygon : region) turns += winding(polygon, p, on_edge);
  return on_edge || turns != 0;
}

bool contains(const Polygon& polygon, FlatPoint p) {
  bool on_edge = false;
  return winding(polygon, p, on_edge) != 0 || on_edge;
}

}  // namespace swathe::plane
