#include <algorithm>
#include <cmath>

#include "base/maths.hpp"
#include "swathe/bumper.hpp"

namespace swathe {
namespace {

/// A place this near a dart's edge counts as on it: computed lengths differ in their last digits.
constexpr double kOnEdge = 1e-9;

}  // namespace

Wrap::Wrap(Frame frame, Section section, Run run)
    : frame_(std::move(frame)), section_(std::move(section)), run_(std::move(run)) {}

const FrameSide& Wrap::side(std::size_t leg) const {
  return frame_.sides()[static_cast<std::size_t>(run_.sides[leg].side)];
}

double Wrap::dart(const RunCorner& corner, double u) const {
  return corner.surplus(section_.at(u).d, section_.depth_mm());
}

LevelLine Wrap::level(std::size_t leg, double u) const {
  LevelLine line{0.0, run_.length};
  const double d = section_.at(u).d;
  if (leg > 0) {
    const RunCorner& before = run_.corners[leg - 1];
    line.from = before.s + dart(before, u);
    line.arc_before = before.half_arc(d);
  }
  if (leg < run_.corners.size()) {
    const RunCorner& after = run_.corners[leg];
    line.to = after.s - dart(after, u);
    line.arc_after = after.half_arc(d);
  }
  return line;
}

int Wrap::side_of(double s) const {
  int side = 0;
  for (const RunCorner& corner : run_.corners) side += s > corner.s ? 1 : 0;
  return side;
}

bool Wrap::past_board(double s) const {
  return s < run_.bare(true) - kOnEdge || s > run_.length - run_.bare(false) + kOnEdge;
}

std::optional<Wrap::Foot> Wrap::foot(ClothPoint p) const {
  const bool bare = past_board(p.s);
  const double top = bare ? section_.bare_half_girth() : section_.cloth_edge_top();
  const double bottom = bare ? -section_.bare_half_girth() : section_.cloth_edge_bottom();
  if (p.s < -kOnEdge || p.s > run_.length + kOnEdge || p.u < bottom - kOnEdge ||
      p.u > top + kOnEdge)
    return std::nullopt;
  const auto leg = static_cast<std::size_t>(side_of(p.s));
  const RunSide& on = run_.sides[leg];
  const SectionPoint at = bare ? section_.bare_at(p.u) : section_.at(p.u);
  Foot foot{leg, at, {p.s - on.s_minus_x, at.d}, 0.0};
  for (const std::size_t c : {leg - 1, leg}) {  // the corner before and the one after
    if (c >= run_.corners.size()) continue;
    const RunCorner& corner = run_.corners[c];
    const double off = std::abs(p.s - corner.s) - dart(corner, p.u);
    if (off < -kOnEdge) return std::nullopt;
    const double arc = corner.half_arc(at.d);
    if (arc <= 0.0 || off >= arc) continue;
    // Measured from where the level line leaves the straight side, towards the corner.
    const double turned = 0.5 * corner.turn - std::max(off, 0.0) / corner.radius(at.d);
    const FlatPoint past = corner.on_arc(at.d, turned);
    foot.plan = {c == leg ? on.to_x + past.x : on.from_x - past.x, past.y};
    foot.turned = c == leg ? turned : -turned;
  }
  return foot;
}

std::optional<SpacePoint> Wrap::at(ClothPoint p) const {
  const std::optional<Foot> foot = this->foot(p);
  if (!foot) return std::nullopt;
  const FlatPoint plan = side(foot->leg).at(foot->plan.x, foot->plan.y);
  return SpacePoint{plan.x, plan.y, foot->at.z + frame_.floor_gap().mm()};
}

std::optional<SpacePoint> Wrap::normal_at(ClothPoint p) const {
  const std::optional<Foot> foot = this->foot(p);
  if (!foot) return std::nullopt;
  const FrameSide& on = side(foot->leg);
  const FlatPoint out = maths::cos(foot->turned) * on.outward + maths::sin(foot->turned) * on.along;
  const double level = maths::cos(foot->at.tilt);
  return SpacePoint{level * out.x, level * out.y, maths::sin(foot->at.tilt)};
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
    const FrameSide& on = side(k);
    const FlatPoint from_corner = FlatPoint{p.x, p.y} - on.from;
    const Section::Foot foot = section_.nearest(dot(from_corner, on.outward), z);
    // The dart's edge is reached from both sides: keep the foot on this one.
    const LevelLine level = this->level(k, foot.u);
    const double along = dot(from_corner, on.along) + leg.s_minus_x;
    if (level.from <= level.to) offer({std::clamp(along, level.from, level.to), foot.u});
    if (past_board(along))
      offer({std::clamp(along, 0.0, run_.length),
             section_.bare_nearest(dot(from_corner, on.outward), z).u});
    if (k >= run_.corners.size() || !run_.corners[k].rounded()) continue;
    const RunCorner& corner = run_.corners[k];
    const FlatPoint bend = corner.on_arc(corner.sharp_to, 0.0);
    const FlatPoint out = FlatPoint{p.x, p.y} - on.at(leg.to_x + bend.x, bend.y);
    const Section::Foot round = section_.nearest(norm(out) + corner.sharp_to, z);
    const double radius = corner.radius(section_.at(round.u).d);
    if (radius <= 0.0) continue;
    const double turned = maths::atan2(dot(out, on.along), dot(out, on.outward));
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
    const double depth = section_.depth_mm();
    const double sharp = section_.short_of_depth(std::min(corner.sharp_to, depth));
    surplus += 2.0 * corner.longer(sharp, section_.short_of_depth(depth) - sharp);
  }
  const double bare = run_.bare(true) + run_.bare(false);
  return (run_.length - bare) * (top - bottom) + bare * 2 * section_.bare_back_edge() - surplus;
}

}  // namespace swathe
