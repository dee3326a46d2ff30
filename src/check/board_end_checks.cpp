#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>

#include "check/checks.hpp"

// Boards' ends that stand out past the frame's corners: hard parts as much as the boards' faces.
namespace swathe {
namespace {

/// An end of a board beside an outside corner of the frame, measured the way it faces: square to
/// the neighboring side, from the true frame.
struct FacingEnd {
  const bumper::Piece* board = nullptr;
  bool start = true;
  int corner = 0;    ///< of the frame, after this side
  int neighbor = 0;  ///< side
  double out = 0;    ///< its furthest edge
  FlatPoint at{};    ///< its inner edge in plan
};

std::optional<FacingEnd> facing_end(const CheckedSet& s, const bumper::Piece& board, bool start) {
  const auto side = s.frame.side(board.side);
  if (!side) return std::nullopt;
  FacingEnd end{&board, start, start ? s.frame.previous(*side) : *side};
  if (s.frame.turn_after(end.corner) <= Angle()) return std::nullopt;
  end.neighbor = start ? end.corner : s.frame.next(*side);
  const FrameSide& on = s.frame.sides()[static_cast<std::size_t>(*side)];
  const FrameSide& next = s.frame.sides()[static_cast<std::size_t>(end.neighbor)];
  const EndCut& cut = start ? board.start : board.end;
  const auto edge = [&](double shorter, double depth) {
    return on.at(start ? board.from_x + shorter : board.to_x - shorter, depth);
  };
  end.at = edge(cut.inner_short, 0.0);
  const auto out = [&](FlatPoint p) { return dot(p - next.from, next.outward); };
  end.out = s.frame.fit().mm() +
            std::max(out(end.at), out(edge(cut.outer_short, s.section.thickness_mm())));
  return end;
}

/// Whether a piece lies on a side: padding that bends round corners is on several.
bool lies_on(const bumper::Piece& piece, const std::string& side) {
  return (" + " + piece.side + " + ").find(" + " + side + " + ") != std::string::npos;
}

/// Padding over a board's end: its own that runs on past it, or the neighbor's in front of it.
double padding_over(const CheckedSet& s, const FacingEnd& end) {
  const double depth = s.section.padding_depth_mm();
  for (const Wrap& wrap : s.wraps)
    for (const RunCorner& corner : wrap.run().corners)
      if (corner.before == end.corner) return depth;  // the padding goes round with the cover
  const FrameSide& next = s.frame.sides()[static_cast<std::size_t>(end.neighbor)];
  const double along = dot(end.at - next.from, next.along);
  const double face = s.frame.fit().mm() + s.section.thickness_mm() + depth;  // the neighbor's
  double over = 0.0;
  for (const bumper::Piece& padding : s.padding) {
    if (padding.bumper == end.board->bumper && lies_on(padding, end.board->side))
      over = std::max(
          over, end.start ? end.board->from_x - padding.from_x : padding.to_x - end.board->to_x);
    if (padding.bumper != end.board->bumper && lies_on(padding, next.name) &&
        padding.from_x <= along && along <= padding.to_x)
      over = std::max(over, std::min(depth, face - end.out));
  }
  return over;
}

std::string name_of(const CheckedSet& s, const FacingEnd& end) {
  return fmt::format("bumper {}, {} board, end by {}", end.board->bumper, end.board->side,
                     s.frame.sides()[static_cast<std::size_t>(end.neighbor)].name);
}

About about(const CheckedSet& s, const FacingEnd& end) {
  About about{{Subject::board(end.board->bumper, end.board->side)},
              {"boards.thickness", "frame.fit", "padding.lapping"}};
  for (std::size_t k = 0; k < s.job.bumpers.size(); ++k)
    if (s.job.bumpers[k].name == end.board->bumper)
      about.keys.push_back(fmt::format("bumper.{}.end_clearance", k + 1));
  return about;
}

}  // namespace

// Every end is measured. Nothing more is said of those that stand out no further than the boards'
// faces, whose finding is there, and have as much padding over them.
void check_board_ends(const CheckedSet& s, const Season& season, Findings& findings) {
  std::optional<FacingEnd> furthest, barest;
  double most = s.frame.fit().mm() + s.section.thickness_mm();
  double least = s.section.padding_depth_mm();
  for (const bumper::Piece& board : s.boards)
    for (const bool start : {true, false}) {
      const auto end = facing_end(s, board, start);
      if (!end || end->out <= kRounding) continue;
      if (end->out > most + kRounding) {
        furthest = end;
        most = end->out;
      }
      const double over = padding_over(s, *end);
      if (over >= least - kRounding) continue;
      barest = end;
      least = over;
    }
  if (season.hard_parts_past_frame && furthest) {
    const double limit = season.hard_parts_past_frame->value.mm();
    findings.at_most(*season.hard_parts_past_frame,
                     {"hard-parts", name_of(s, *furthest) + ": out from the frame", furthest->out,
                      fmt::format("saw the board {} shorter there",
                                  findings.rounded_text(furthest->out - limit)),
                      about(s, *furthest)},
                     Grace::Inspection);
  }
  if (season.hard_parts_under_padding && barest) {
    const double limit = season.hard_parts_under_padding->value.mm();
    findings.at_least(
        *season.hard_parts_under_padding,
        {"hard-parts", name_of(s, *barest) + ": padding over it", least,
         fmt::format("saw the board {} shorter there", findings.rounded_text(limit - least)),
         about(s, *barest)},
        Grace::Inspection);
  }
}

}  // namespace swathe
