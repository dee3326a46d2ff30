#include "swathe/bumper/pieces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "swathe/base/maths.hpp"
#include "swathe/base/units.hpp"

namespace swathe {
namespace {

/// Two strips of the same depth that meet at a corner, seen from the end of the first.
struct Meeting {
  double reach = 0;      ///< beyond the frame's corner (negative: short of it), the longest edge
  double angle_deg = 0;  ///< off square
  EndCut::Kind kind = EndCut::Kind::Free;
};

/// Strips lie between the depths `near` and `far` from the frame's line; `turn` in radians.
/// A lapping strip ends flush with its neighbour's outer face; a butting one against the lapping
/// strip's inner face; mitred ones in the bisecting plane.
Meeting lapping_end(double near, double far, double turn) {
  const auto reach = [&](double d) { return (far - d * maths::cos(turn)) / maths::sin(turn); };
  return {std::max(reach(near), reach(far)), 90.0 - Angle::from_radians(turn).degrees(),
          EndCut::Kind::Laps};
}
Meeting butting_end(double near, double far, double turn) {
  const auto reach = [&](double d) {
    // Minus the place on the neighbour's line.
    return (near - d * maths::cos(turn)) / maths::sin(turn);
  };
  return {std::max(reach(near), reach(far)), 90.0 - Angle::from_radians(turn).degrees(),
          EndCut::Kind::Butts};
}
Meeting mitred_end(double far, double turn) {
  return {far * maths::tan(0.5 * turn), Angle::from_radians(0.5 * turn).degrees(),
          EndCut::Kind::Mitred};
}

bool among(const std::vector<std::string>& names, const std::string& name) {
  return std::ranges::find(names, name) != names.end();
}

/// What stands at both ends of one leg of a run, for strips joined by `join(corner, this side
/// first?)`.
template <class Join>
Piece piece_of(const Run& run, const Frame& frame, std::size_t leg, Join join) {
  const RunSide& on = run.sides[leg];
  Piece piece;
  piece.bumper = run.name;
  piece.side = frame.sides()[static_cast<std::size_t>(on.side)].name;
  piece.from_x = on.from_x;
  piece.to_x = on.to_x;
  if (on.starts_at_corner) {
    const Meeting meeting = join(run.corners[leg - 1], false);
    piece.from_x -= meeting.reach;
    piece.start = {meeting.kind, meeting.angle_deg};
  }
  if (on.ends_at_corner) {
    const Meeting meeting = join(run.corners[leg], true);
    piece.to_x += meeting.reach;
    piece.end = {meeting.kind, meeting.angle_deg};
  }
  piece.length_mm = piece.to_x - piece.from_x;
  return piece;
}

/// Padding that bends round corners is one piece from end to end of the run.
Piece joined(const std::vector<Piece>& legs) {
  Piece whole = legs.front();
  for (std::size_t k = 1; k < legs.size(); ++k) {
    whole.side += " + " + legs[k].side;
    whole.length_mm += legs[k].length_mm;
  }
  whole.to_x = legs.back().to_x;
  whole.end = legs.back().end;
  return whole;
}

/// Strips that one corner laps: how it is asked for, and what else would do.
struct Lap {
  const std::vector<std::string>& lapping;
  const char* key;       ///< of the list
  const char* kind_key;  ///< of the joint
  const char* what;
  const char* instead;
};

/// A saw leans no further than this, off square. Common practice, no source.
constexpr double kMostLean = 60.0;

/// At every corner of the run exactly one of the two sides laps, and a saw can cut the end.
Refusals lapping_faults(const Frame& frame, const Run& run, const Lap& lap, const Places& places) {
  Refusals faults;
  for (const RunCorner& corner : run.corners) {
    const std::string& before = frame.sides()[static_cast<std::size_t>(corner.before)].name;
    const std::string& after = frame.sides()[static_cast<std::size_t>(corner.after)].name;
    const double turn = Angle::from_radians(corner.turn).degrees();
    if (std::abs(90.0 - turn) > kMostLean + 1e-6)
      faults.push_back(
          {Why::DoesNotFit,
           fmt::format("{} of \"{}\" and \"{}\" would be cut {} deg off square where their corner "
                       "turns {} deg, expected {}",
                       lap.what, before, after, plain_number(std::abs(90.0 - turn), 1),
                       plain_number(turn, 1), lap.instead),
           places.of(lap.kind_key)});
    if (among(lap.lapping, before) != among(lap.lapping, after)) continue;
    faults.push_back(
        {Why::DoesNotFit,
         fmt::format("{} of \"{}\" and \"{}\" {} at their corner, expected exactly one "
                     "of the two sides in the list",
                     lap.what, before, after,
                     among(lap.lapping, before) ? "both lap" : "both butt"),
         places.of(lap.key)});
  }
  return faults;
}

}  // namespace

Outcome<std::vector<Piece>> board_pieces(const Frame& frame, const Section& section, const Run& run,
                                         const BackingKeys& backing, const Places& places) {
  const double t = section.thickness_mm();
  if (backing.joint == Joint::Lapped)
    if (Refusals faults = lapping_faults(frame, run,
                                         {backing.lapping, "backing.lapping", "backing.joint",
                                          "the boards", "backing.joint = \"mitred\""},
                                         places);
        !faults.empty())
      return tl::unexpected(std::move(faults));
  std::vector<Piece> pieces;
  for (std::size_t leg = 0; leg < run.sides.size(); ++leg)
    pieces.push_back(piece_of(run, frame, leg, [&](const RunCorner& corner, bool first) {
      if (backing.joint == Joint::Mitred) return mitred_end(t, corner.turn);
      const int side = first ? corner.before : corner.after;
      return among(backing.lapping, frame.sides()[static_cast<std::size_t>(side)].name)
                 ? lapping_end(0.0, t, corner.turn)
                 : butting_end(0.0, t, corner.turn);
    }));
  return pieces;
}

Outcome<std::vector<Piece>> padding_pieces(const Frame& frame, const Section& section,
                                           const Run& run, const PaddingKeys& padding,
                                           const Places& places) {
  const double near = section.thickness_mm(), far = near + section.padding_depth_mm();
  if (padding.corner == PaddingCorner::Butted)
    if (Refusals faults = lapping_faults(frame, run,
                                         {padding.lapping, "padding.lapping", "padding.corner",
                                          "the padding", "padding.corner = \"mitred\" or \"bent\""},
                                         places);
        !faults.empty())
      return tl::unexpected(std::move(faults));
  std::vector<Piece> pieces;
  for (std::size_t leg = 0; leg < run.sides.size(); ++leg) {
    Piece piece = piece_of(run, frame, leg, [&](const RunCorner& corner, bool first) -> Meeting {
      if (padding.corner == PaddingCorner::Mitred) return mitred_end(far, corner.turn);
      if (padding.corner ==
          PaddingCorner::Bent)  // each side's half of the bend, on the padding's middle
        return {near * maths::tan(0.5 * corner.turn) + 0.25 * (far - near) * corner.turn, 0.0,
                EndCut::Kind::Bent};
      const int side = first ? corner.before : corner.after;
      return among(padding.lapping, frame.sides()[static_cast<std::size_t>(side)].name)
                 ? lapping_end(near, far, corner.turn)
                 : butting_end(near, far, corner.turn);
    });
    piece.count = padding.form == PaddingForm::Rods ? padding.stack : 1;
    pieces.push_back(piece);
  }
  if (padding.corner == PaddingCorner::Bent) pieces = {joined(pieces)};
  return pieces;
}

}  // namespace swathe
