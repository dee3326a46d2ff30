#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

#include "base/maths.hpp"
#include "swathe/plane.hpp"

namespace swathe::plane {
namespace {

constexpr double kPi = std::numbers::pi;
/// Angles closer than this are one: discs on a common tangent differ only by rounding.
constexpr double kSameAngle = 1e-9;

/// How far a disc may stand out of another, mm, and still lie within it.
constexpr double kWithin = 1e-9;

bool lies_within(const Disc& disc, const Disc& other) {
  return norm(disc.center - other.center) + disc.radius <= other.radius + kWithin;
}

/// Those that do not lie within another, of equal ones the first: what touches one from within has
/// a tangent in common with it, and would be walked on to with no way back.
std::vector<Disc> not_within_others(const std::vector<Disc>& discs) {
  std::vector<Disc> kept;
  for (std::size_t k = 0; k < discs.size(); ++k) {
    const auto covers = [&](std::size_t j) {
      return j != k && lies_within(discs[k], discs[j]) &&
             (j < k || !lies_within(discs[j], discs[k]));
    };
    bool covered = false;
    for (std::size_t j = 0; j < discs.size(); ++j) covered = covered || covers(j);
    if (!covered) kept.push_back(discs[k]);
  }
  return kept;
}

double turned_onto(double angle) {
  angle = std::fmod(angle, 2 * kPi);
  return angle < 0 ? angle + 2 * kPi : angle;
}

double support(const Disc& disc, double normal) {
  return dot(disc.center, direction(normal)) + disc.radius;
}

/// The disc that bears the tangent of this normal; of several on it, the foremost in its direction
/// of travel.
std::size_t bearing(const std::vector<Disc>& discs, double normal) {
  const FlatPoint travel = left_of(direction(normal));
  std::size_t best = 0;
  for (std::size_t i = 1; i < discs.size(); ++i) {
    const double more = support(discs[i], normal) - support(discs[best], normal);
    const double scale = 1e-12 * (1.0 + std::abs(support(discs[best], normal)));
    if (more > scale || (more > -scale && dot(discs[i].center - discs[best].center, travel) > 0.0))
      best = i;
  }
  return best;
}

/// The next tangent met when the normal turns counter-clockwise from `normal` on disc `on`.
struct Handover {
  double turn = 0;  ///< of the normal until then
  std::size_t to = 0;
};

Handover next_handover(const std::vector<Disc>& discs, std::size_t on, double normal) {
  Handover best{2 * kPi, on};
  double best_reach = -1.0;
  for (std::size_t j = 0; j < discs.size(); ++j) {
    const FlatPoint way = discs[j].center - discs[on].center;
    const double reach = norm(way), less = discs[on].radius - discs[j].radius;
    if (j == on || reach <= std::abs(less)) continue;  // one within the other
    const double at = maths::atan2(way.y, way.x) - maths::acos(less / reach);
    double turn = turned_onto(at - normal);
    if (turn > 2 * kPi - kSameAngle) turn = 0.0;
    const bool sooner = turn < best.turn - kSameAngle;
    if (sooner || (turn < best.turn + kSameAngle && reach > best_reach)) {
      best = {sooner ? turn : std::min(turn, best.turn), j};
      best_reach = reach;
    }
  }
  return best;
}

HullPiece arc(const Disc& disc, double normal, double turn) {
  return {disc.center + disc.radius * direction(normal),
          disc.center + disc.radius * direction(normal + turn),
          turned_onto(normal + kPi / 2),
          turn,
          disc.radius * turn,
          disc.center,
          disc.radius};
}

}  // namespace

std::vector<HullPiece> hull_of_discs(const std::vector<Disc>& all) {
  assert(!all.empty());
  const std::vector<Disc> discs = not_within_others(all);
  // The walk starts with the heading 0, that is with the normal pointing straight down.
  double normal = -kPi / 2, turned = 0.0;
  std::size_t on = bearing(discs, normal);
  std::vector<HullPiece> hull;
  while (turned < 2 * kPi - kSameAngle) {
    const Handover next = next_handover(discs, on, normal);
    const double turn = std::min(next.turn, 2 * kPi - turned);
    if (turn > 0.0) hull.push_back(arc(discs[on], normal, turn));
    normal += turn;
    turned += turn;
    if (turned >= 2 * kPi - kSameAngle && next.turn > turn + kSameAngle) break;
    if (next.to == on) break;
    const FlatPoint from = discs[on].center + discs[on].radius * direction(normal);
    const FlatPoint to = discs[next.to].center + discs[next.to].radius * direction(normal);
    hull.push_back({from, to, turned_onto(normal + kPi / 2), 0.0, apart(from, to), {}, 0.0});
    on = next.to;
  }
  // An arc that straddles the heading 0 was met twice: at the start and at the end of the walk.
  if (hull.size() > 1 && hull.back().turn > 0.0) {
    HullPiece& first = hull.front();
    const HullPiece& last = hull.back();
    first.from = last.from;
    first.heading = last.heading;
    first.turn += last.turn;
    first.length += last.length;
    hull.pop_back();
  }
  return hull;
}

double girth(const std::vector<HullPiece>& hull) {
  double sum = 0.0;
  for (const HullPiece& piece : hull) sum += piece.length;
  return sum;
}

}  // namespace swathe::plane
