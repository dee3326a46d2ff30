#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/maths.hpp"
#include "swathe/sight.hpp"

namespace swathe {
namespace {

constexpr int kBendChords = 4;  // of half a bent corner

/// Steps in which a turn on this radius stays within kSolidChord of its chords.
int chords(double radius, double turn) {
  if (radius <= kSolidChord.mm()) return 1;
  const double step = 2.0 * maths::acos(1.0 - kSolidChord.mm() / radius);
  return std::max(1, static_cast<int>(std::ceil(turn / step)));
}

/// The section's outline as a convex polygon, x = d, y = z.
plane::Polygon section_outline(const Section& section) {
  plane::Polygon outline;
  for (const plane::HullPiece& piece : section.hull()) {
    outline.push_back(piece.from);
    const int steps = piece.turn > 0.0 ? chords(piece.radius, piece.turn) : 1;
    for (int k = 1; k < steps; ++k) {
      const double out = maths::atan2(piece.from.y - piece.center.y, piece.from.x - piece.center.x);
      outline.push_back(piece.center +
                        piece.radius * plane::direction(out + piece.turn * k / steps));
    }
  }
  return outline;
}

/// The same past a board's end, round the padding alone.
plane::Polygon bare_outline(const Section& section) {
  const double radius = 0.5 * (section.padding_depth_mm() + section.cloth_thickness_mm());
  const double turn = std::numbers::pi;
  plane::Polygon outline;
  for (const double u : section.bare_heights(turn / chords(radius, turn))) {
    const SectionPoint p = section.bare_at(u);
    outline.push_back({p.d, p.z});
  }
  outline.pop_back();  // it has come round
  return outline;
}

struct Span {
  double near = 1e300, far = -1e300;
};

/// What a level line takes of a convex outline.
Span span_at(const plane::Polygon& outline, double z) {
  Span span;
  const auto cover = [&](double d) {
    span.near = std::min(span.near, d);
    span.far = std::max(span.far, d);
  };
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const FlatPoint a = outline[k], b = outline[(k + 1) % outline.size()];
    if (a.y == z) cover(a.x);
    if ((a.y < z) != (b.y < z) && a.y != b.y) cover(a.x + (b.x - a.x) * (z - a.y) / (b.y - a.y));
  }
  return span;
}

/// One side of a bumper: level outlines between its ends, mitre planes or half bends.
class Leg {
 public:
  Leg(const Wrap& wrap, std::size_t leg) : wrap_(wrap), on_(wrap.run().sides[leg]) {
    const auto& corners = wrap.run().corners;
    if (leg > 0) before_ = &corners[leg - 1];
    if (leg < corners.size()) after_ = &corners[leg];
  }

  plane::Polygon plan(Span span) const {
    // Seen from above the side runs counter-clockwise round the frame, its outside on the right.
    plane::Polygon start;
    add_end(start, span.far, true);
    add_end(start, span.near, true);
    plane::Polygon plan(start.rbegin(), start.rend());
    add_end(plan, span.far, false);
    add_end(plan, span.near, false);
    return plan;
  }

 private:
  /// Points of one end at one depth: one, or the chords of half a bend, towards its middle.
  void add_end(plane::Polygon& plan, double d, bool start) const {
    const FrameSide& side = wrap_.frame().sides()[static_cast<std::size_t>(on_.side)];
    const RunCorner* corner = start ? before_ : after_;
    const double x = start ? on_.board_from() : on_.board_to(), sense = start ? -1.0 : 1.0;
    if (!corner) {
      plan.push_back(side.at(x, d));
      return;
    }
    const int chords = corner->rounded() ? kBendChords : 0;
    for (int k = 0; k <= chords; ++k) {
      const double turned = chords == 0 ? 0.0 : 0.5 * corner->turn * k / chords;
      const FlatPoint past = corner->on_arc(d, turned);
      plan.push_back(side.at(x + sense * past.x, past.y));
    }
  }

  const Wrap& wrap_;
  const RunSide& on_;
  const RunCorner *before_ = nullptr, *after_ = nullptr;
};

std::vector<double> heights_of(const plane::Polygon& outline) {
  constexpr double kThin = 1e-6;
  std::vector<double> heights;
  for (const FlatPoint p : outline) heights.push_back(p.y);
  std::ranges::sort(heights);
  heights.erase(std::unique(heights.begin(), heights.end(),
                            [&](double a, double b) { return b - a < kThin; }),
                heights.end());
  return heights;
}

/// Padding that runs on past its board at one end of the run.
sight::Solid bare_solid(const Wrap& wrap, bool start) {
  const plane::Polygon outline = bare_outline(wrap.section());
  const RunSide& leg = start ? wrap.run().sides.front() : wrap.run().sides.back();
  const FrameSide& side = wrap.frame().sides()[static_cast<std::size_t>(leg.side)];
  const double from = start ? leg.from_x : leg.board_to();
  const double to = start ? leg.board_from() : leg.to_x;
  sight::Solid solid;
  solid.name = "bumper " + wrap.run().name;
  for (const double z : heights_of(outline)) {
    const Span span = span_at(outline, z);
    solid.levels.push_back({z + wrap.frame().floor_gap().mm(),
                            {side.at(from, span.near), side.at(from, span.far),
                             side.at(to, span.far), side.at(to, span.near)}});
  }
  return solid;
}

}  // namespace

plane::Polygon sight::Solid::plan_at(double z) const {
  if (levels.empty()) return {};
  const auto above = std::ranges::lower_bound(levels, z, {}, &Level::z);
  if (above == levels.begin()) return levels.front().plan;
  if (above == levels.end()) return levels.back().plan;
  const Level& hi = *above;
  const Level& lo = *std::prev(above);
  const double share = (z - lo.z) / (hi.z - lo.z);
  plane::Polygon plan;
  for (std::size_t k = 0; k < lo.plan.size(); ++k)
    plan.push_back(lo.plan[k] + share * (hi.plan[k] - lo.plan[k]));
  return plan;
}

std::vector<sight::Solid> bumper_solids(const Wrap& wrap) {
  const plane::Polygon outline = section_outline(wrap.section());
  const std::vector<double> heights = heights_of(outline);
  std::vector<sight::Solid> solids;
  for (std::size_t k = 0; k < wrap.run().sides.size(); ++k) {
    const Leg leg(wrap, k);
    sight::Solid& solid = solids.emplace_back();
    solid.name = "bumper " + wrap.run().name;
    for (const double z : heights)
      solid.levels.push_back({z + wrap.frame().floor_gap().mm(), leg.plan(span_at(outline, z))});
  }
  for (const bool start : {true, false})
    if (wrap.run().bare(start) > 0.0) solids.push_back(bare_solid(wrap, start));
  return solids;
}

sight::Solid blind_solid(const BlindKeys& box, int number) {
  const double x0 = box.lo[0].mm(), y0 = box.lo[1].mm(), x1 = box.hi[0].mm(), y1 = box.hi[1].mm();
  const plane::Polygon plan = {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
  return {fmt::format("blind box {}", number), {{box.lo[2].mm(), plan}, {box.hi[2].mm(), plan}}};
}

}  // namespace swathe
