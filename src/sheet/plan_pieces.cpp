#include "sheet/plan_pieces.hpp"

#include <algorithm>
#include <cassert>

#include "base/maths.hpp"

namespace swathe {
namespace {

/// A strip's depths from the frame's line.
struct Depths {
  double near = 0, far = 0;
};

plane::Path strip_in_plan(const FrameSide& side, const bumper::Piece& piece, const Depths& depths) {
  return plane::closed_path({side.at(piece.from_x + piece.start.inner_short, depths.near),
                             side.at(piece.from_x + piece.start.outer_short, depths.far),
                             side.at(piece.to_x - piece.end.outer_short, depths.far),
                             side.at(piece.to_x - piece.end.inner_short, depths.near)});
}

/// Along the outside of the run, then back along the boards.
plane::Path bent_in_plan(const Made& made, const Run& run, const Depths& depths) {
  plane::Path path;
  path.closed = true;
  std::vector<FlatPoint> inside;
  for (std::size_t k = 0; k < run.sides.size(); ++k) {
    const RunSide& leg = run.sides[k];
    const FrameSide& side = made.frame.sides()[static_cast<std::size_t>(leg.side)];
    const auto from = [&](double depth) {
      const double past = leg.starts_at_corner ? run.corners[k - 1].straight(depth) : 0.0;
      return side.at(leg.from_x - past, depth);
    };
    const auto to = [&](double depth) {
      const double past = leg.ends_at_corner ? run.corners[k].straight(depth) : 0.0;
      return side.at(leg.to_x + past, depth);
    };
    path.vertices.push_back({from(depths.far), 0});
    const double bulge = leg.ends_at_corner ? maths::tan(0.25 * run.corners[k].turn) : 0.0;
    path.vertices.push_back({to(depths.far), bulge});
    if (k == 0) inside.push_back(from(depths.near));
    inside.push_back(to(depths.near));
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

plane::Path board_in_plan(const Made& made, const bumper::Piece& board) {
  return strip_in_plan(side_named(made, board.side), board, {0, made.section.thickness_mm()});
}

plane::Path padding_in_plan(const Made& made, const bumper::Piece& padding) {
  const double near = made.section.thickness_mm();
  const Depths depths{near, near + made.section.padding_depth_mm()};
  if (made.job.padding.corner != PaddingCorner::Bent)
    return strip_in_plan(side_named(made, padding.side), padding, depths);
  const auto wrap = std::ranges::find_if(
      made.wraps, [&](const Wrap& one) { return one.run().name == padding.bumper; });
  assert(wrap != made.wraps.end());
  return bent_in_plan(made, wrap->run(), depths);
}

plane::Box reach_in_plan(const Made& made) {
  plane::Box box;
  for (const bumper::Piece& piece : made.padding) box.cover(bounds(padding_in_plan(made, piece)));
  return box;
}

}  // namespace swathe
