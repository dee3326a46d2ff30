#include <fmt/format.h>

#include <algorithm>

#include "check/checks.hpp"
#include "job/key_path.hpp"

// Brackets on the boards' backs: our own advice, no season rules on them.
namespace swathe {
namespace {

/// A bracket as it sits on a board's inside face, mm right and down from the face's top left.
struct Seat {
  const BracketKeys& keys;
  int number;  ///< of the bracket in the job, from 1
  const Wrap& wrap;
  const RunSide& leg;
  plane::Box box;

  double board() const { return leg.board_to() - leg.board_from(); }
  std::string key(const char* name) const { return fmt::format("bracket.{}.{}", number, name); }
  /// The side on to which the frame turns before this one, or after it.
  const std::string& neighbor(bool before) const {
    const Frame& frame = wrap.frame();
    const int side = before ? frame.previous(leg.side) : frame.next(leg.side);
    return frame.sides()[static_cast<std::size_t>(side)].name;
  }
};

std::vector<Seat> seats_of(const CheckedSet& s) {
  std::vector<Seat> seats;
  for (std::size_t b = 0; b < s.patterns.size(); ++b)
    for (const BracketOnPattern& bracket : s.patterns[b].brackets) {
      const BracketKeys& keys = s.job.brackets[static_cast<std::size_t>(bracket.keys)];
      const RunSide& leg = s.wraps[b].run().sides[static_cast<std::size_t>(bracket.leg)];
      const double left = stretch_of(s.frame, leg.side, keys).from - leg.board_from();
      seats.push_back(
          {keys,
           bracket.keys + 1,
           s.wraps[b],
           leg,
           {{left, keys.down.mm()}, {left + keys.width.mm(), (keys.down + keys.height).mm()}}});
    }
  return seats;
}

/// By its number in the list of brackets, as on the sheets.
std::string name_of(const Seat& seat) {
  return fmt::format("bumper {}, bracket {} on {}", seat.wrap.run().name, seat.number,
                     seat.keys.side);
}

/// Moved along its board, where that brings it near neither of its corners.
std::vector<KeyChange> moved(const Findings& findings, const Seat& seat, double right) {
  // A centered one is told from a corner once it is moved off the middle.
  const auto* from = std::get_if<FromCorner>(&seat.keys.at);
  const std::string& corner = from ? from->neighbor : seat.neighbor(true);
  const Frame& frame = seat.wrap.frame();
  const bool from_left = frame.begins_at(seat.leg.side, corner);
  const double edge = seat.leg.board_from() + (from_left ? seat.box.lo.x : seat.box.hi.x) + right;
  const double at = frame.from_corner(seat.leg.side, edge, corner).mm();
  const double clear = seat.keys.clearance.mm(), step = inches(1.0 / 16).mm();
  const double low = seat.leg.starts_at_corner ? clear : 0.0;
  const double high = seat.board() - (seat.leg.ends_at_corner ? clear : 0.0);
  // Rounded, it may go on by a step.
  const bool fits = seat.box.lo.x + right >= low + (right < 0 ? step : 0.0) - kRounding &&
                    seat.box.hi.x + right <= high - (right > 0 ? step : 0.0) + kRounding;
  if (!fits || at < 0) return {};
  // The place is rounded away from what it stands too near.
  const bool up = (right > 0) == from_left;
  return {{seat.key("at"),
           fmt::format("[{}, {}]", up ? findings.at_least_value(at) : findings.at_most_value(at),
                       quoted_text(corner))}};
}

/// Nothing may stand nearer than the clearance asked for.
void judge_distance(Findings& findings, const Seat& seat, const std::string& to, double apart,
                    double clear, std::vector<KeyChange> mend = {}) {
  if (apart >= clear - kRounding) return;
  Findings::Held held = findings.held_texts(apart, clear);
  if (apart < -kRounding) held.measured = "over it by " + findings.measured_text(-apart, {0});
  findings.advise({"bracket",
                   name_of(seat),
                   fmt::format("at least {} from {}", held.limit, to),
                   held.measured,
                   Verdict::Warn,
                   fmt::format("move it {} away from {}", findings.rounded_text(clear - apart), to),
                   {{Subject::bracket(seat.number)},
                    {seat.key("at"), seat.key("clearance")},
                    std::move(mend)}});
}

void judge_corner_joints(Findings& findings, const Seat& seat) {
  const double clear = seat.keys.clearance.mm();
  const double left = seat.box.lo.x, right = seat.board() - seat.box.hi.x;
  if (seat.leg.starts_at_corner)
    judge_distance(findings, seat, "the corner joint with " + seat.neighbor(true), left, clear,
                   moved(findings, seat, clear - left));
  if (seat.leg.ends_at_corner)
    judge_distance(findings, seat, "the corner joint with " + seat.neighbor(false), right, clear,
                   moved(findings, seat, right - clear));
}

void judge_neighbors(Findings& findings, const std::vector<Seat>& seats, std::size_t k) {
  for (std::size_t other = k + 1; other < seats.size(); ++other) {
    const Seat &a = seats[k], &b = seats[other];
    if (&a.leg != &b.leg) continue;
    const double across = std::max(a.box.lo.x - b.box.hi.x, b.box.lo.x - a.box.hi.x);
    const double down = std::max(a.box.lo.y - b.box.hi.y, b.box.lo.y - a.box.hi.y);
    judge_distance(findings, b, "the bracket before it", std::max(across, down),
                   std::max(a.keys.clearance, b.keys.clearance).mm());
  }
}

/// A bracket over a flap's edge sits half on cloth and half on wood.
void judge_bare_board(const CheckedSet& s, Findings& findings, const Seat& seat) {
  if (seat.keys.cloth != BracketCloth::Under) return;
  const double top_edge = s.section.flap_mm(), bottom_edge = s.section.height_mm() - top_edge;
  const double bare = std::min(seat.box.hi.y, bottom_edge) - std::max(seat.box.lo.y, top_edge);
  const bool on_cloth = seat.box.lo.y < top_edge || seat.box.hi.y > bottom_edge;
  if (!on_cloth || bare <= kRounding) return;
  findings.advise(
      {"bracket",
       name_of(seat),
       "all of it on cloth, or in a window",
       fmt::format("{} of its height on bare board", findings.measured_text(bare, {0})),
       Verdict::Warn,
       fmt::format("put {} of cloth under the part on bare board, or set {} to \"window\"",
                   findings.exact_text(mm(s.section.cloth_thickness_mm())), seat.key("cloth")),
       {{Subject::bracket(seat.number)},
        {seat.key("cloth"), seat.key("down"), seat.key("height")},
        {{seat.key("cloth"), "\"window\""}}}});
}

}  // namespace

void check_brackets(const CheckedSet& s, const Season&, Findings& findings) {
  const std::vector<Seat> seats = seats_of(s);
  for (std::size_t k = 0; k < seats.size(); ++k) {
    judge_corner_joints(findings, seats[k]);
    judge_neighbors(findings, seats, k);
    judge_bare_board(s, findings, seats[k]);
  }
}

}  // namespace swathe
