#include "sheet/plan_pieces.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "swathe/base/maths.hpp"

namespace swathe {
namespace {

/// A strip's depths from the frame's line.
struct Depths {
  double near = 0, far = 0;
};

/// What an end cut off square takes from the longest edge, at each depth.
struct Taken {
  double near = 0, far = 0;
};

Taken taken_by(const EndCut& end, const Depths& depths) {
  const double off = (depths.far - depths.near) *
                     maths::tan(std::abs(Angle::from_degrees(end.angle_deg).radians()));
  // Mitred ends are longest outside; ends that lap or butt lean either way.
  const bool long_outside = end.kind == EndCut::Kind::Mitred || end.angle_deg < 0;
  return long_outside ? Taken{off, 0} : Taken{0, off};
}

Path strip_in_plan(const FrameSide& side, const Piece& piece, const Depths& depths) {
  const Taken start = taken_by(piece.start, depths), end = taken_by(piece.end, depths);
  const auto at = [&](double x, double d) { return side.from + x * side.along + d * side.outward; };
  return closed_path(
      {at(piece.from_x + start.near, depths.near), at(piece.from_x + start.far, depths.far),
       at(piece.to_x - end.far, depths.far), at(piece.to_x - end.near, depths.near)});
}

/// Along the run outside, then back along the boards.
Path bent_in_plan(const Made& made, const Run& run, const Depths& depths) {
  Path path;
  path.closed = true;
  const auto side_of = [&](const RunSide& leg) {
    return made.frame.sides()[static_cast<std::size_t>(leg.side)];
  };
  std::vector<FlatPoint> inside;
  for (std::size_t k = 0; k < run.sides.size(); ++k) {
    const RunSide& leg = run.sides[k];
    const FrameSide side = side_of(leg);
    const auto past = [&](std::size_t corner) {
      return depths.near * maths::tan(0.5 * run.corners[corner].turn);
    };
    const double from = leg.from_x - (leg.starts_at_corner ? past(k - 1) : 0.0);
    const double to = leg.to_x + (leg.ends_at_corner ? past(k) : 0.0);
    const auto at = [&](double x, double d) {
      return side.from + x * side.along + d * side.outward;
    };
    path.vertices.push_back({at(from, depths.far), 0});
    const double bulge = leg.ends_at_corner ? maths::tan(0.25 * run.corners[k].turn) : 0.0;
    path.vertices.push_back({at(to, depths.far), bulge});
    if (k == 0) inside.push_back(at(from, depths.near));
    inside.push_back(at(to, depths.near));
  }
  for (auto p = inside.rbegin(); p != inside.rend(); ++p) path.vertices.push_back({*p, 0});
  return path;
}

const FrameSide& side_named(const Made& made, const std::string& name) {
  const auto side = made.frame.side(name);
  assert(side && "a piece lies on a side of the frame");
  return made.frame.sides()[static_cast<std::size_t>(*side)];
}

}  // namespace

Path board_in_plan(const Made& made, const Piece& board) {
  return strip_in_plan(side_named(made, board.side), board, {0, made.section.thickness_mm()});
}

Path padding_in_plan(const Made& made, const Piece& padding) {
  const double near = made.section.thickness_mm();
  const Depths depths{near, near + made.section.padding_depth_mm()};
  if (made.job.padding.corner != PaddingCorner::Bent)
    return strip_in_plan(side_named(made, padding.side), padding, depths);
  const auto wrap = std::ranges::find_if(
      made.wraps, [&](const Wrap& one) { return one.run().name == padding.bumper; });
  assert(wrap != made.wraps.end());
  return bent_in_plan(made, wrap->run(), depths);
}

Box reach_in_plan(const Made& made) {
  Box box;
  for (const Piece& piece : made.padding) box.cover(bounds(padding_in_plan(made, piece)));
  return box;
}

}  // namespace swathe
