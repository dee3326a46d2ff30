#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "rules/practice.hpp"
#include "swathe/base.hpp"
#include "swathe/bumper.hpp"

namespace swathe {
namespace {

/// A strip of padding or board: what lies between two depths.
struct Strip {
  double inner = 0, outer = 0;
};

/// How one strip ends where it meets another of the same depths.
struct Meeting {
  double reach = 0;  ///< beyond the frame's corner (negative: short of it), the longest edge
  EndCut cut;
};

/// A strip's end, from where its inner and outer edge end and how far off square the cut is.
Meeting meeting(EndCut::Kind kind, double inner, double outer, double angle_rad) {
  const double reach = std::max(inner, outer);
  return {reach, {kind, Angle::from_radians(angle_rad).degrees(), reach - inner, reach - outer}};
}

/// Where it laps, level with the neighbor's outer face; else against the neighbor's inner face.
Meeting lapped(const Corner& corner, const Strip& strip, bool laps) {
  const double neighbor = laps ? strip.outer : strip.inner;
  return meeting(laps ? EndCut::Kind::Laps : EndCut::Kind::Butts,
                 corner.crossing(strip.inner, neighbor), corner.crossing(strip.outer, neighbor),
                 0.5 * std::numbers::pi - corner.turn);
}
Meeting mitred(const Corner& corner, const Strip& strip) {
  return meeting(EndCut::Kind::Mitred, corner.straight(strip.inner), corner.straight(strip.outer),
                 0.5 * corner.turn);
}
/// Each side's half of the bend, on the strip's middle.
Meeting bent(const Corner& corner, const Strip& strip) {
  const double middle = corner.to_middle(0.5 * (strip.inner + strip.outer));
  return meeting(EndCut::Kind::Bent, middle, middle, 0.0);
}

bool among(const std::vector<std::string>& names, const std::string& name) {
  return std::ranges::find(names, name) != names.end();
}

bool laps(const std::vector<std::string>& lapping, const Frame& frame, const RunCorner& corner,
          bool first) {
  const int side = first ? corner.before : corner.after;
  return among(lapping, frame.sides()[static_cast<std::size_t>(side)].name);
}

/// A free end that stands at a corner for its neighbor runs past it or stops at it: there its
/// padding runs on past its board, or would, but for a stretch too short to be covered.
EndCut::Kind free_end(const Frame& frame, const Section& section, const Run& run,
                      const RunSide& leg, bool start) {
  constexpr double kTouch = 1e-6;
  const double length = frame.sides()[static_cast<std::size_t>(leg.side)].length_mm;
  const double past = (start ? -leg.from_x : leg.to_x - length) + run.end_clearance;
  const Corner corner = frame.corner_after(start ? frame.previous(leg.side) : leg.side);
  const double thick = section.thickness_mm(), depth = section.depth_mm();
  if ((start ? leg.bare_start : leg.bare_end) == 0.0) {
    if (corner.turn <= 0.0) return EndCut::Kind::Free;
    const auto cut_flush = [&](bool laps) {
      const Corner::SquareEnd end = corner.square_end(thick, depth, laps);
      return end.padding - end.board > kTouch &&
             end.padding - end.board < practice::kLeastBare.mm() &&
             std::abs(past - end.board) < kTouch;
    };
    return cut_flush(true)    ? EndCut::Kind::Laps
           : cut_flush(false) ? EndCut::Kind::Butts
                              : EndCut::Kind::Free;
  }
  return past > corner.straight(thick) + kTouch ? EndCut::Kind::Laps : EndCut::Kind::Butts;
}

/// The side that a leg lies next to, where its run has two legs on one side: its first and its
/// last.
std::string beside(const Run& run, const Frame& frame, std::size_t leg) {
  const auto on_side = std::ranges::count(run.sides, run.sides[leg].side, &RunSide::side);
  if (on_side < 2) return "";
  const std::size_t neighbor = leg == 0 ? 1 : leg - 1;
  return frame.sides()[static_cast<std::size_t>(run.sides[neighbor].side)].name;
}

/// What stands at both ends of one leg of a run, for strips joined by `join(corner, this side
/// first?)`; `from` and `to` are its free ends.
template <class Join>
bumper::Piece piece_of(const Run& run, const Frame& frame, const Section& section, std::size_t leg,
                       double from, double to, Join join) {
  const RunSide& on = run.sides[leg];
  bumper::Piece piece;
  piece.bumper = run.name;
  piece.side = frame.sides()[static_cast<std::size_t>(on.side)].name;
  piece.from_x = from;
  piece.to_x = to;
  piece.start.kind = free_end(frame, section, run, on, true);
  piece.end.kind = free_end(frame, section, run, on, false);
  if (on.starts_at_corner) {
    const Meeting meeting = join(run.corners[leg - 1], false);
    piece.from_x -= meeting.reach;
    piece.start = meeting.cut;
  }
  if (on.ends_at_corner) {
    const Meeting meeting = join(run.corners[leg], true);
    piece.to_x += meeting.reach;
    piece.end = meeting.cut;
  }
  piece.length_mm = piece.to_x - piece.from_x;
  piece.next_to = beside(run, frame, leg);
  return piece;
}

/// Padding that bends round corners is one piece from end to end of the run.
bumper::Piece joined(const std::vector<bumper::Piece>& legs) {
  bumper::Piece whole = legs.front();
  whole.next_to.clear();
  for (std::size_t k = 1; k < legs.size(); ++k) {
    whole.bends.push_back(whole.length_mm);
    whole.side += " + " + legs[k].side;
    whole.length_mm += legs[k].length_mm;
  }
  whole.to_x = legs.back().to_x;
  whole.end = legs.back().end;
  return whole;
}

/// A joint where one side's strip runs past the other's: the keys that ask for it, and what to give
/// instead.
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
         fmt::format("at the corner of \"{}\" and \"{}\" {} of both sides would {} the neighbor, "
                     "expected exactly one of the two sides in {}",
                     before, after, lap.what, among(lap.lapping, before) ? "run past" : "stop at",
                     lap.key),
         places.of(lap.key)});
  }
  return faults;
}

}  // namespace

std::string piece_name(const bumper::Piece& piece) {
  const std::string name = piece.bumper + " " + piece.side;
  return piece.next_to.empty() ? name : name + " by " + piece.next_to;
}

Outcome<std::vector<bumper::Piece>> board_pieces(const Frame& frame, const Section& section,
                                                 const Run& run, const BoardKeys& boards,
                                                 const Places& places) {
  const Strip strip{0.0, section.thickness_mm()};
  if (boards.joint == Joint::Lapped)
    if (Refusals faults = lapping_faults(frame, run,
                                         {boards.lapping, "boards.lapping", "boards.joint",
                                          "the boards", "boards.joint = \"mitred\""},
                                         places);
        !faults.empty())
      return tl::unexpected(std::move(faults));
  std::vector<bumper::Piece> pieces;
  for (std::size_t leg = 0; leg < run.sides.size(); ++leg) {
    const double from = run.sides[leg].board_from(), to = run.sides[leg].board_to();
    pieces.push_back(
        piece_of(run, frame, section, leg, from, to, [&](const RunCorner& corner, bool first) {
          if (boards.joint == Joint::Mitred) return mitred(corner, strip);
          return lapped(corner, strip, laps(boards.lapping, frame, corner, first));
        }));
  }
  return pieces;
}

Outcome<std::vector<bumper::Piece>> padding_pieces(const Frame& frame, const Section& section,
                                                   const Run& run, const PaddingKeys& padding,
                                                   const Places& places) {
  const Strip strip{section.thickness_mm(), section.thickness_mm() + section.padding_depth_mm()};
  if (padding.corner == PaddingCorner::Butted)
    if (Refusals faults = lapping_faults(frame, run,
                                         {padding.lapping, "padding.lapping", "padding.corner",
                                          "the padding", "padding.corner = \"mitred\" or \"bent\""},
                                         places);
        !faults.empty())
      return tl::unexpected(std::move(faults));
  std::vector<bumper::Piece> pieces;
  for (std::size_t leg = 0; leg < run.sides.size(); ++leg) {
    const double from = run.sides[leg].from_x, to = run.sides[leg].to_x;
    bumper::Piece piece =
        piece_of(run, frame, section, leg, from, to, [&](const RunCorner& corner, bool first) {
          if (padding.corner == PaddingCorner::Mitred) return mitred(corner, strip);
          if (padding.corner == PaddingCorner::Bent) return bent(corner, strip);
          return lapped(corner, strip, laps(padding.lapping, frame, corner, first));
        });
    piece.count = padding.form == PaddingForm::Noodles ? padding.stack : 1;
    pieces.push_back(piece);
  }
  if (padding.corner == PaddingCorner::Bent) pieces = {joined(pieces)};
  return pieces;
}

}  // namespace swathe
