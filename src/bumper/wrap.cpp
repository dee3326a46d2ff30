#include "swathe/bumper/wrap.hpp"

#include <algorithm>
#include <cmath>

#include "swathe/base/maths.hpp"
#include "swathe/bumper/corner.hpp"

namespace swathe {
namespace {

/// A place within this much of a dart's edge is on the edge: lengths differ in their last digits.
constexpr double kOnEdge = 1e-9;

}  // namespace

Wrap::Wrap(Frame frame, Section section, Run run, PaddingCorner corner)
    : frame_(std::move(frame)),
      section_(std::move(section)),
      run_(std::move(run)),
      corner_(corner) {}

double Wrap::dart(const RunCorner& corner, double u) const {
  const double d = section_.at(u).d, half = 0.5 * corner.turn;
  const double depth = section_.depth_mm(), t = section_.thickness_mm();
  if (corner_ != PaddingCorner::Bent) return (depth - d) * maths::tan(half);
  return d >= t ? (depth - d) * half : (t - d) * maths::tan(half) + (depth - t) * half;
}

int Wrap::side_of(double s) const {
  int side = 0;
  for (const RunCorner& corner : run_.corners) side += s > corner.s ? 1 : 0;
  return side;
}

std::optional<Wrap::Foot> Wrap::foot(ClothPoint p) const {
  if (p.s < -kOnEdge || p.s > run_.length + kOnEdge ||
      p.u < section_.cloth_edge_bottom() - kOnEdge || p.u > section_.cloth_edge_top() + kOnEdge)
    return std::nullopt;
  const auto leg = static_cast<std::size_t>(side_of(p.s));
  const SectionPoint at = section_.at(p.u);
  Foot foot{run_.sides[leg].side, p.s - run_.sides[leg].s_minus_x, at, 0.0};
  for (const std::size_t c : {leg - 1, leg}) {  // the corner before and the one after
    if (c >= run_.corners.size()) continue;
    const RunCorner& corner = run_.corners[c];
    const double off = std::abs(p.s - corner.s) - dart(corner, p.u);
    if (off < -kOnEdge) return std::nullopt;
    const double radius = at.d - section_.thickness_mm();
    if (corner_ != PaddingCorner::Bent || radius <= 0.0 || off >= radius * 0.5 * corner.turn)
      continue;
    // On the arc: measured from where the level line leaves the straight side, towards the corner.
    const double turned = 0.5 * corner.turn - std::max(off, 0.0) / radius;
    foot.turned = c == leg ? turned : -turned;
  }
  return foot;
}

std::optional<SpacePoint> Wrap::at(ClothPoint p) const {
  const std::optional<Foot> foot = this->foot(p);
  if (!foot) return std::nullopt;
  const FrameSide& side = frame_.sides()[static_cast<std::size_t>(foot->side)];
  FlatPoint plan;
  if (foot->turned == 0.0) {
    plan = side.from + foot->x * side.along + foot->at.d * side.outward;
  } else {
    plan = bend_centre(foot->side, foot->turned > 0.0) +
           (foot->at.d - section_.thickness_mm()) * turned_outward(side, foot->turned);
  }
  return SpacePoint{plan.x, plan.y, foot->at.z + frame_.floor_gap().mm()};
}

std::optional<SpacePoint> Wrap::normal_at(ClothPoint p) const {
  const std::optional<Foot> foot = this->foot(p);
  if (!foot) return std::nullopt;
  const FlatPoint out =
      turned_outward(frame_.sides()[static_cast<std::size_t>(foot->side)], foot->turned);
  const double level = maths::cos(foot->at.tilt);
  return SpacePoint{level * out.x, level * out.y, maths::sin(foot->at.tilt)};
}

FlatPoint Wrap::turned_outward(const FrameSide& side, double turned) {
  return maths::cos(turned) * side.outward + maths::sin(turned) * side.along;
}

FlatPoint Wrap::bend_centre(int side, bool at_end) const {
  const FrameSide& on = frame_.sides()[static_cast<std::size_t>(side)];
  const double t = section_.thickness_mm();
  const double turn = frame_.turn_after(at_end ? side : frame_.previous(side)).radians();
  const double past = t * maths::tan(0.5 * turn);
  return at_end ? on.to + past * on.along + t * on.outward
                : on.from - past * on.along + t * on.outward;
}

std::optional<ClothPoint> Wrap::cloth_at(SpacePoint p, double reach_mm) const {
  std::optional<ClothPoint> best;
  double nearest = reach_mm;
  const double z = p.z - frame_.floor_gap().mm();
  const auto offer = [&](ClothPoint q) {
    const std::optional<SpacePoint> on_cloth = at(q);
    if (!on_cloth || apart(*on_cloth, p) > nearest) return;
    nearest = apart(*on_cloth, p);
    best = q;
  };
  for (std::size_t k = 0; k < run_.sides.size(); ++k) {
    const RunSide& leg = run_.sides[k];
    const FrameSide& side = frame_.sides()[static_cast<std::size_t>(leg.side)];
    const FlatPoint from_corner = FlatPoint{p.x, p.y} - side.from;
    const Section::Foot foot = section_.nearest(dot(from_corner, side.outward), z);
    // The dart's edge is reached from both sides: keep the foot on this one.
    double lo = 0.0, hi = run_.length;
    if (k > 0) lo = run_.corners[k - 1].s + dart(run_.corners[k - 1], foot.u);
    if (k < run_.corners.size()) hi = run_.corners[k].s - dart(run_.corners[k], foot.u);
    if (lo <= hi) offer({std::clamp(dot(from_corner, side.along) + leg.s_minus_x, lo, hi), foot.u});
    if (corner_ != PaddingCorner::Bent || k >= run_.corners.size()) continue;
    const RunCorner& corner = run_.corners[k];
    const FlatPoint out = FlatPoint{p.x, p.y} - bend_centre(leg.side, true);
    const Section::Foot round = section_.nearest(norm(out) + section_.thickness_mm(), z);
    const double radius = section_.at(round.u).d - section_.thickness_mm();
    if (radius <= 0.0) continue;
    const double turned = maths::atan2(dot(out, side.along), dot(out, side.outward));
    const double before = 0.5 * corner.turn - turned;  // to the bisector; negative beyond it
    const double off = std::abs(before) * radius + dart(corner, round.u);
    if (turned >= 0.0 && turned <= corner.turn)
      offer({corner.s + (before > 0.0 ? -off : off), round.u});
  }
  return best;
}

double Wrap::surface_area() const {
  // Level lines lie square to the section and u measures it, so the area is their length summed
  // over u.
  const double top = section_.back_edge_top(), bottom = section_.back_edge_bottom();
  double surplus = 0.0;
  for (const RunCorner& corner : run_.corners) {
    const double half = 0.5 * corner.turn, depth = section_.depth_mm(), t = section_.thickness_mm();
    if (corner_ != PaddingCorner::Bent) {
      surplus += 2.0 * maths::tan(half) * section_.short_of_depth(depth);
    } else {
      surplus += 2.0 * half * (section_.short_of_depth(depth) - section_.short_of_depth(t)) +
                 2.0 * maths::tan(half) * section_.short_of_depth(t);
    }
  }
  return run_.length * (top - bottom) - surplus;
}

}  // namespace swathe
