#include "check/plan.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/maths.hpp"

namespace swathe {
namespace {

double before_side(const Frame& frame, int side) {
  double sum = 0;
  for (int i = 0; i < side; ++i) sum += frame.sides()[static_cast<std::size_t>(i)].length_mm;
  return sum;
}

}  // namespace

double past_true_corner(const Frame& frame, int side) {
  return frame.corner_after(side).straight(frame.fit().mm());
}

double bearing_of(const Frame& frame, int side) {
  const FlatPoint out = frame.sides()[static_cast<std::size_t>(side)].outward;
  const double deg = maths::atan2(-out.x, out.y) * 180.0 / std::numbers::pi;
  return deg < -1e-9 ? deg + 360.0 : std::max(0.0, deg);
}

std::vector<CoveredSide> covered_sides(const CheckedSet& subject) {
  const Frame& frame = subject.frame;
  std::vector<CoveredSide> sides;
  for (int i = 0; i < static_cast<int>(frame.sides().size()); ++i) {
    const FrameSide& side = frame.sides()[static_cast<std::size_t>(i)];
    const double shift = past_true_corner(frame, frame.previous(i));
    CoveredSide& covered = sides.emplace_back();
    covered.name = side.name;
    covered.length = side.length_mm - shift - past_true_corner(frame, i);
    for (const Wrap& wrap : subject.wraps) {
      for (const RunSide& leg : wrap.run().sides) {
        if (leg.side == i) covered.covered.push_back({leg.from_x - shift, leg.to_x - shift});
      }
    }
    std::ranges::stable_sort(covered.covered, {}, &CoveredStretch::from);
  }
  return sides;
}

std::string corner_name(const Frame& frame, int side_before) {
  const auto name = [&](int i) { return frame.sides()[static_cast<std::size_t>(i)].name; };
  return name(side_before) + "-" + name(frame.next(side_before)) + " corner";
}

std::size_t bumper_after(const CheckedSet& subject, std::size_t bumper) {
  const Frame& frame = subject.frame;
  const double whole = before_side(frame, static_cast<int>(frame.sides().size()));
  const RunSide& end = subject.wraps[bumper].run().sides.back();
  std::size_t next = bumper;
  double nearest = 1e300;
  for (std::size_t i = 0; i < subject.wraps.size(); ++i) {
    const RunSide& start = subject.wraps[i].run().sides.front();
    // Counted from the middle of the last side's stretch, which no other bumper's start precedes:
    // ends that meet at a corner may reach past it, and so past each other.
    const double from = before_side(frame, end.side) + 0.5 * (end.from_x + end.to_x);
    const double to = before_side(frame, start.side) + start.from_x;
    const double on = std::fmod(to - from + 2 * whole, whole);
    if (i != bumper && on < nearest) {
      nearest = on;
      next = i;
    }
  }
  return next;
}

}  // namespace swathe
