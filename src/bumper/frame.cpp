#include <fmt/format.h>

#include <algorithm>

#include "base/maths.hpp"
#include "swathe/bumper.hpp"
#include "swathe/plane.hpp"

namespace swathe {
namespace {

/// A side shorter than this cannot be built on, or even drawn.
constexpr double kShortestSide = 0.5;

/// The outline with every side moved outwards by `by`: its corners are where neighbors then cross.
plane::Polygon grown(const plane::Polygon& corners, double by) {
  const std::size_t n = corners.size();
  plane::Polygon out(n);
  for (std::size_t i = 0; i < n; ++i) {
    const FlatPoint in = unit(corners[i] - corners[(i + n - 1) % n]);
    const FlatPoint on = unit(corners[(i + 1) % n] - corners[i]);
    const double bend = 1.0 + dot(in, on);  // 2 cos^2 of half the turn
    const FlatPoint normals = FlatPoint{in.y, -in.x} + FlatPoint{on.y, -on.x};
    out[i] = corners[i] + (by / bend) * normals;
  }
  return out;
}

}  // namespace

Outcome<Frame> Frame::make(const FrameKeys& keys, const Places& places) {
  const plane::Polygon& corners = keys.corners;
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i)
    if (apart(corners[i], corners[(i + 1) % n]) < kShortestSide)
      return refuse(Why::DoesNotFit,
                    fmt::format("side \"{}\" is {} mm long, expected at least {} mm", keys.sides[i],
                                plain_number(apart(corners[i], corners[(i + 1) % n]), 3),
                                plain_number(kShortestSide, 1)),
                    places.of("frame.corners"));
  if (!is_simple(corners))
    return refuse(
        Why::DoesNotFit,
        "the frame's outline crosses itself, expected its corners in order, counter-clockwise",
        places.of("frame.corners"));
  if (area(corners) < 0)
    return refuse(Why::DoesNotFit,
                  "the frame's corners run clockwise, expected counter-clockwise seen from above",
                  places.of("frame.corners"));

  const plane::Polygon line = grown(corners, keys.fit.mm());
  if (!is_simple(line))
    return refuse(Why::DoesNotFit,
                  "the frame's outline crosses itself when it grows by frame.fit, expected a "
                  "smaller frame.fit",
                  places.of("frame.fit"));
  Frame frame;
  frame.fit_ = keys.fit;
  frame.floor_gap_ = keys.floor_gap;
  for (std::size_t i = 0; i < n; ++i) {
    const FlatPoint from = line[i], to = line[(i + 1) % n];
    const FlatPoint along = unit(to - from);
    frame.sides_.push_back({keys.sides[i], from, to, along, {along.y, -along.x}, apart(from, to)});
  }
  return frame;
}

std::optional<int> Frame::side(std::string_view name) const {
  const auto found = std::ranges::find(sides_, name, &FrameSide::name);
  if (found == sides_.end()) return std::nullopt;
  return static_cast<int>(found - sides_.begin());
}

Angle Frame::turn_after(int side) const {
  const FlatPoint a = sides_[static_cast<std::size_t>(side)].along;
  const FlatPoint b = sides_[static_cast<std::size_t>(next(side))].along;
  return Angle::from_radians(maths::atan2(cross(a, b), dot(a, b)));
}

Corner Frame::corner_after(int side) const {
  Corner corner;
  corner.turn = turn_after(side).radians();
  return corner;
}

FlatPoint Frame::center() const {
  plane::Box box;
  for (const FrameSide& side : sides_) box.cover(side.from);
  return box.middle();
}

}  // namespace swathe
