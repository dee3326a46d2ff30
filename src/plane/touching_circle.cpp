#include "plane/touching_circle.hpp"

#include "plane/bounded.hpp"

namespace swathe::plane {
namespace {

constexpr double kEnough = 0x1p-48;

/// A line seen from an origin near by: what is far from zero has fewer digits left for differences.
/// Its places (x, y) have x dy - y dx = moment.
struct LineFrom {
  LineFrom(const WholeLine& line, FlatPoint origin)
      : LineFrom(line.from - origin, line.to - origin) {}
  LineFrom(FlatPoint from, FlatPoint to)
      : way(to - from),
        dx(way.x),
        dy(way.y),
        length(square_root(dx * dx + dy * dy)),
        moment(Bounded::whole_cross(from.x, from.y, to.x, to.y)) {}

  FlatPoint way;
  Bounded dx, dy, length, moment;
};

Bounded cross_of(const LineFrom& a, const LineFrom& b) {
  return Bounded::whole_cross(a.way.x, a.way.y, b.way.x, b.way.y);
}

/// The circle about a place seen from an origin.
std::optional<TouchingCircle> circle_at(Bounded x, Bounded y, Bounded radius, FlatPoint origin) {
  x = x + Bounded(origin.x);
  y = y + Bounded(origin.y);
  const Bounded right = x + radius;
  if (!x.within(kEnough) || !y.within(kEnough) || !right.within(kEnough)) return std::nullopt;
  return TouchingCircle{{x.value(), y.value()}, right.value()};
}

}  // namespace

// A center c that is r to the right of a line of unit way u has cross(c, u) = moment / length + r.
// Three of these, solved by Cramer's rule; all is multiplied by the three lengths.
std::optional<TouchingCircle> circle_touching(const WholeLine& one, const WholeLine& two,
                                              const WholeLine& three) {
  const FlatPoint origin = two.from;
  const LineFrom a(one, origin), b(two, origin), c(three, origin);
  const Bounded ab = cross_of(a, b), bc = cross_of(b, c), ca = cross_of(c, a);
  const Bounded whole = bc * a.length + ca * b.length + ab * c.length;
  const Bounded x = (b.dx * c.moment - c.dx * b.moment) * a.length +
                    (c.dx * a.moment - a.dx * c.moment) * b.length +
                    (a.dx * b.moment - b.dx * a.moment) * c.length;
  const Bounded y = (b.dy * c.moment - c.dy * b.moment) * a.length +
                    (c.dy * a.moment - a.dy * c.moment) * b.length +
                    (a.dy * b.moment - b.dy * a.moment) * c.length;
  const Bounded radius = -(bc * a.moment + ca * b.moment + ab * c.moment);
  return circle_at(x / whole, y / whole, radius / whole, origin);
}

// Seen from the point, the center is t times the bisector away from where the lines meet, and so
// |t turn| from either line. It is as far from the point itself where
// closing^2 t^2 + 2 along t + |meet|^2 = 0.
std::optional<TouchingCircle> circle_through(FlatPoint point, const WholeLine& one,
                                             const WholeLine& two, bool further) {
  const LineFrom a(one, point), b(two, point);
  const Bounded turn = cross_of(a, b);
  const Bounded meet_x = (a.dx * b.moment - b.dx * a.moment) / turn;
  const Bounded meet_y = (a.dy * b.moment - b.dy * a.moment) / turn;
  const Bounded bisector_x = a.dx * b.length + b.dx * a.length;
  const Bounded bisector_y = a.dy * b.length + b.dy * a.length;
  const Bounded along = meet_x * bisector_x + meet_y * bisector_y;
  const Bounded lengths = a.length * b.length, dot = a.dx * b.dx + a.dy * b.dy;
  // Two ways to the same: in either case that in which nothing cancels.
  const Bounded closing = dot.value() < 0 ? turn * turn / (lengths - dot) : lengths + dot;
  const Bounded apart = square_root(Bounded(-2) * closing * a.moment * b.moment);
  const Bounded t = ((further ? apart : -apart) - along) / (closing * closing);
  return circle_at(meet_x + t * bisector_x, meet_y + t * bisector_y, abs(t * turn), point);
}

}  // namespace swathe::plane
