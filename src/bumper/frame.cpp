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

Outcome<Frame> Frame::make(const FrameKeys& keys, const Places& places, Units units) {
  const plane::Polygon& corners = keys.corners;
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i)
    if (apart(corners[i], corners[(i + 1) % n]) < kShortestSide)
      return refuse(Why::DoesNotFit,
                    fmt::format("side \"{}\" is {} long, expected at least {}", keys.sides[i],
                                exact(mm(apart(corners[i], corners[(i + 1) % n])), units),
                                exact(mm(kShortestSide), units)),
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
    // The frame's own corner lies back along the grown side by how far the play reaches round it.
    frame.sides_.push_back({keys.sides[i],
                            from,
                            to,
                            along,
                            {along.y, -along.x},
                            apart(from, to),
                            dot(corners[i] - from, along),
                            apart(corners[i], corners[(i + 1) % n])});
  }
  return frame;
}

std::optional<int> Frame::side(std::string_view name) const {
  const auto found = std::ranges::find(sides_, name, &FrameSide::name);
  if (found == sides_.end()) return std::nullopt;
  return static_cast<int>(found - sides_.begin());
}

double Frame::along(int side, const SidePlace& place) const {
  const FrameSide& on = sides_[static_cast<std::size_t>(side)];
  if (const auto* share = std::get_if<SideShare>(&place))
    return on.own_from + share->fraction * on.own_length;
  const FromCorner& from = std::get<FromCorner>(place);
  return begins_at(side, from.neighbor) ? on.own_from + from.distance.mm()
                                        : on.own_from + on.own_length - from.distance.mm();
}

bool Frame::begins_at(int side, std::string_view neighbor) const {
  return sides_[static_cast<std::size_t>(previous(side))].name == neighbor;
}

Length Frame::from_corner(int side, double x, std::string_view neighbor) const {
  const FrameSide& on = sides_[static_cast<std::size_t>(side)];
  const double from_start = x - on.own_from;
  return mm(begins_at(side, neighbor) ? from_start : on.own_length - from_start);
}

AlongSide stretch_of(const Frame& frame, int side, const BracketKeys& bracket) {
  const double at = frame.along(side, bracket.at), width = bracket.width.mm();
  const auto* from = std::get_if<FromCorner>(&bracket.at);
  if (!from) return {at - 0.5 * width, at + 0.5 * width};
  if (frame.begins_at(side, from->neighbor)) return {at, at + width};
  return {at - width, at};
}

AlongSide stretch_of(const Frame& frame, int side, const OpeningKeys& opening) {
  const double center = frame.along(side, opening.center), half = 0.5 * opening.width.mm();
  return {center - half, center + half};
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
