#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/print.hpp"
#include "base/workshop.hpp"
#include "job/key_path.hpp"
#include "pattern/fastening.hpp"
#include "rules/practice.hpp"

namespace swathe {
namespace {

constexpr double kSlack = 1e-6;

/// The flap a footprint may reach: from its back edge to its cloth edge, as u.
struct Flap {
  bool top = true;
  double back_edge = 0, cloth_edge = 0;
};

/// u on a flap of a place `down` from the board's top edge.
double u_on(const Flap& flap, const Section& section, double down) {
  return flap.top ? flap.back_edge + down : flap.back_edge - (section.height_mm() - down);
}

/// What is wrong with a key, and the value that would do.
Refusal with_mend(std::string sentence, Place place, std::string value) {
  const std::string key = place.key;
  return {Why::DoesNotFit, std::move(sentence), std::move(place), {{key, std::move(value)}}};
}

bool lies_on(const AlongSide& bracket, const RunSide& leg) {
  return bracket.from >= leg.board_from() - kSlack && bracket.to <= leg.board_to() + kSlack;
}

/// Why a bracket does not lie on a board of its side, told from the corner that it is measured
/// from.
Refusal off_board(const Wrap& wrap, const RunSide& leg, const BracketKeys& keys,
                  const std::string& table, const Job& job) {
  const Frame& frame = wrap.frame();
  const Units units = job.units;
  const AlongSide bracket = stretch_of(frame, leg.side, keys);
  std::string corner = measured_from(keys);
  if (corner.empty())
    corner = frame.sides()[static_cast<std::size_t>(frame.previous(leg.side))].name;
  const auto told = [&](double x) { return frame.from_corner(leg.side, x, corner); };
  const bool forth = frame.begins_at(leg.side, corner);
  const Length near = told(forth ? bracket.from : bracket.to);
  const Length far = told(forth ? bracket.to : bracket.from);
  const Length board_near = told(forth ? leg.board_from() : leg.board_to());
  const Length board_far = told(forth ? leg.board_to() : leg.board_from());
  // The board may begin before the corner, by the play; a place cannot.
  const Length first = std::max(board_near, Length());
  if (keys.width > board_far - first) {
    const std::string most = exact(on_tape(board_far - first, units, Rounding::Down), units);
    return with_mend(fmt::format("the bracket is {} wide, expected at most {}, as long as the "
                                 "board of bumper \"{}\" is there",
                                 exact(keys.width, units), most, wrap.run().name),
                     job.places.of(table + ".width"), quoted_text(most));
  }
  const bool before = near < board_near;
  const Length place = before ? on_tape(first, units, Rounding::Up)
                              : on_tape(board_far - keys.width, units, Rounding::Down);
  const std::string at = fmt::format("[\"{}\", \"{}\"]", exact(place, units), corner);
  return with_mend(
      fmt::format("the bracket {} {} from the frame's corner with \"{}\", and the board of bumper "
                  "\"{}\" {} {}, expected at {} {}",
                  before ? "begins" : "ends", exact(before ? near : far, units), corner,
                  wrap.run().name, before ? "only at" : "already at",
                  exact(before ? board_near : board_far, units), before ? "least" : "most", at),
      job.places.of(table + ".at"), at);
}

/// How much of a bracket lies on a board; negative where it is beside it.
double shared(const AlongSide& bracket, const RunSide& leg) {
  return std::min(bracket.to, leg.board_to()) - std::max(bracket.from, leg.board_from());
}

/// The run's side whose board a bracket lies on; where it lies on none, the nearest one of its
/// side.
struct Seat {
  std::optional<int> on, nearest;
};

Seat seat_on(const Wrap& wrap, const BracketKeys& keys) {
  const auto side = wrap.frame().side(keys.side);
  if (!side) return {};
  const std::vector<RunSide>& legs = wrap.run().sides;
  const AlongSide bracket = stretch_of(wrap.frame(), *side, keys);
  Seat seat;
  for (int k = 0; k < static_cast<int>(legs.size()); ++k) {
    const RunSide& leg = legs[static_cast<std::size_t>(k)];
    if (leg.side != *side) continue;
    if (!seat.on && lies_on(bracket, leg)) seat.on = k;
    if (!seat.nearest ||
        shared(bracket, leg) > shared(bracket, legs[static_cast<std::size_t>(*seat.nearest)]))
      seat.nearest = k;
  }
  return seat;
}

/// The run's side that a bracket is on; none where it is another bumper's.
Outcome<std::optional<int>> leg_of(const Wrap& wrap, const BracketKeys& keys,
                                   const std::string& table, const Job& job) {
  const Seat seat = seat_on(wrap, keys);
  if (keys.bumper.empty() || (seat.on && keys.bumper == wrap.run().name)) return seat.on;
  if (keys.bumper != wrap.run().name) return std::nullopt;
  if (seat.nearest)
    return tl::unexpected(Refusals{off_board(
        wrap, wrap.run().sides[static_cast<std::size_t>(*seat.nearest)], keys, table, job)});
  std::vector<std::string> sides;
  for (const RunSide& leg : wrap.run().sides)
    sides.push_back(wrap.frame().sides()[static_cast<std::size_t>(leg.side)].name);
  return refuse(Why::UnknownName,
                fmt::format("bumper \"{}\" has no board on side \"{}\", expected {}, or no bumper "
                            "named: it follows from side and place",
                            keys.bumper, keys.side, quoted_choice(sides)),
                job.places.of(table + ".side"));
}

Refusals too_low(const Section& section, const BracketKeys& keys, const std::string& table,
                 const Job& job) {
  const double board = section.height_mm();
  if (keys.down.mm() + keys.height.mm() <= board + kSlack) return {};
  const bool too_high = keys.height > mm(board);
  const std::string most =
      exact(on_tape(too_high ? mm(board) : mm(board) - keys.height, job.units, Rounding::Down),
            job.units);
  return {with_mend(
      fmt::format("the bracket ends {} below the top of a board that is {} high, expected {}",
                  exact(keys.down + keys.height, job.units), exact(mm(board), job.units),
                  too_high ? fmt::format("a bracket at most {} high", most)
                           : fmt::format("at most {} here", most)),
      job.places.of(table + (too_high ? ".height" : ".down")), quoted_text(most))};
}

/// A window on one flap, corners rounded but for those it opens to the cloth's edge through.
plane::Path window_path(Span along, double near, double far, double radius, bool open) {
  const FlatPoint lo{along.from, std::min(near, far)}, hi{along.to, std::max(near, far)};
  plane::Path path = rounded_rectangle(lo, hi, radius);
  if (!open || path.vertices.size() != 8) return path;
  // Vertices run counter-clockwise from the lower left; square the two corners at the cloth's edge.
  const bool up = far > near;
  if (up)
    return {{{{lo.x, hi.y}, 0},
             path.vertices[7],
             path.vertices[0],
             path.vertices[1],
             path.vertices[2],
             {{hi.x, hi.y}, 0}},
            true};
  return {{{{hi.x, lo.y}, 0},
           path.vertices[3],
           path.vertices[4],
           path.vertices[5],
           path.vertices[6],
           {{lo.x, lo.y}, 0}},
          true};
}

void lay_on_flap(BracketOnPattern& laid, const Flap& flap, const Section& section,
                 const std::vector<Span>& spans, const BracketKeys& keys) {
  const double out = flap.top ? 1.0 : -1.0;  // from the back edge to the cloth's edge
  const auto clipped = [&](double grow) -> std::optional<Span> {
    const double a = u_on(flap, section, keys.down.mm() - grow);
    const double b = u_on(flap, section, (keys.down + keys.height).mm() + grow);
    const double near =
        std::max(0.0, std::min(out * (a - flap.back_edge), out * (b - flap.back_edge)));
    const double far = std::min(out * (flap.cloth_edge - flap.back_edge),
                                std::max(out * (a - flap.back_edge), out * (b - flap.back_edge)));
    if (far - near <= kSlack) return std::nullopt;
    return Span{flap.back_edge + out * near, flap.back_edge + out * far};
  };
  const std::optional<Span> foot = clipped(0.0);
  if (!foot) return;
  for (const Span& span : spans) {
    const Span along{std::max(span.from, laid.s), std::min(span.to, laid.s + laid.width)};
    if (along.length() <= kSlack) continue;
    laid.footprints.push_back(plane::rectangle({along.from, std::min(foot->from, foot->to)},
                                               {along.to, std::max(foot->from, foot->to)}));
    if (keys.cloth != BracketCloth::Window) continue;
    const double grow = keys.clearance.mm();
    Span window = *clipped(grow);
    const bool open = out * (flap.cloth_edge - window.to) < practice::kLeastStrip.mm();
    if (open) window.to = flap.cloth_edge;
    laid.open_to_edge = laid.open_to_edge || open;
    const Span wide{std::max(span.from, laid.s - grow),
                    std::min(span.to, laid.s + laid.width + grow)};
    laid.windows.push_back(
        window_path(wide, window.from, window.to, keys.corner_radius.mm(), open));
  }
}

void lay_holes(BracketOnPattern& laid, const Flap& flap, const Section& section,
               const std::vector<Span>& spans, const BracketKeys& keys, bool from_start) {
  if (keys.cloth != BracketCloth::Under) return;
  for (const FlatPoint hole : keys.holes) {
    const FlatPoint at{laid.s + (from_start ? hole.x : laid.width - hole.x),
                       u_on(flap, section, keys.down.mm() + hole.y)};
    const double out = flap.top ? at.y - flap.back_edge : flap.back_edge - at.y;
    const bool on_flap = out >= 0.0 && out <= std::abs(flap.cloth_edge - flap.back_edge);
    const bool on_span = std::ranges::any_of(
        spans, [&](const Span& span) { return at.x >= span.from && at.x <= span.to; });
    if (on_flap && on_span) laid.holes.push_back({at, 0.5 * practice::kPunch.mm(), keys.side});
  }
}

}  // namespace

Outcome<std::vector<BracketOnPattern>> lay_brackets(const Wrap& wrap, const Job& job) {
  const Section& section = wrap.section();
  const std::vector<Span> top_spans = flap_spans(wrap, job.cloth, notches(wrap, job.cloth, true));
  const std::vector<Span> bottom_spans =
      flap_spans(wrap, job.cloth, notches(wrap, job.cloth, false));
  std::vector<BracketOnPattern> brackets;
  Refusals faults;
  for (std::size_t k = 0; k < job.brackets.size(); ++k) {
    const BracketKeys& keys = job.brackets[k];
    if (keys.side.empty()) continue;  // it has a fault of its own
    const std::string table = fmt::format("bracket.{}", k);
    const auto chosen = leg_of(wrap, keys, table, job);
    if (!chosen) {
      faults.insert(faults.end(), chosen.error().begin(), chosen.error().end());
      continue;
    }
    if (!*chosen) continue;
    const RunSide& leg = wrap.run().sides[static_cast<std::size_t>(**chosen)];
    if (Refusals wrong = too_low(section, keys, table, job); !wrong.empty()) {
      faults.insert(faults.end(), wrong.begin(), wrong.end());
      continue;
    }
    const std::string& corner = measured_from(keys);
    const bool from_start = corner.empty() || wrap.frame().begins_at(leg.side, corner);
    BracketOnPattern laid;
    laid.keys = static_cast<int>(k);
    laid.leg = **chosen;
    laid.side = keys.side;
    laid.s = stretch_of(wrap.frame(), leg.side, keys).from + leg.s_minus_x;
    laid.width = keys.width.mm();
    laid.height = keys.height.mm();
    laid.cloth = keys.cloth;
    const double taken = taken_at_corners(wrap, job.cloth, laid.s + 0.5 * laid.width);
    const Flap top{true, section.back_edge_top() + taken, section.cloth_edge_top()};
    const Flap bottom{false, section.back_edge_bottom() - taken, section.cloth_edge_bottom()};
    laid.u = u_on(keys.down.mm() < section.flap_mm() ? top : bottom, section, keys.down.mm());
    lay_on_flap(laid, top, section, top_spans, keys);
    lay_on_flap(laid, bottom, section, bottom_spans, keys);
    lay_holes(laid, top, section, top_spans, keys, from_start);
    lay_holes(laid, bottom, section, bottom_spans, keys, from_start);
    brackets.push_back(std::move(laid));
  }
  if (!faults.empty()) return tl::unexpected(std::move(faults));
  return brackets;
}

Refusals faults_of_brackets(const std::vector<Wrap>& wraps, const Job& job) {
  Refusals faults;
  for (std::size_t k = 0; k < job.brackets.size(); ++k) {
    const BracketKeys& keys = job.brackets[k];
    if (!keys.bumper.empty() || keys.side.empty()) continue;
    const std::string table = fmt::format("bracket.{}", k);
    const Wrap* nearest = nullptr;
    int leg = 0;
    double most = 0;
    bool lies = false;
    for (const Wrap& wrap : wraps) {
      const Seat seat = seat_on(wrap, keys);
      lies = lies || seat.on;
      if (!seat.nearest) continue;
      const RunSide& side = wrap.run().sides[static_cast<std::size_t>(*seat.nearest)];
      const double on_it = shared(stretch_of(wrap.frame(), side.side, keys), side);
      if (nearest && on_it <= most) continue;
      nearest = &wrap;
      leg = *seat.nearest;
      most = on_it;
    }
    if (lies) continue;
    if (nearest)
      faults.push_back(off_board(*nearest, nearest->run().sides[static_cast<std::size_t>(leg)],
                                 keys, table, job));
    else
      faults.push_back(
          {Why::DoesNotFit,
           fmt::format("no bumper has a board on side \"{}\", expected a side that has "
                       "one",
                       keys.side),
           job.places.of(table + ".side")});
  }
  return faults;
}

}  // namespace swathe
