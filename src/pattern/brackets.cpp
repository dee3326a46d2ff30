#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/print.hpp"
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

/// The sides that a bumper is on, as a choice: "front" or "left".
std::string sides_of(const Wrap& wrap) {
  std::vector<std::string> names;
  for (const RunSide& leg : wrap.run().sides)
    names.push_back(wrap.frame().sides()[static_cast<std::size_t>(leg.side)].name);
  return quoted_choice(names);
}

/// s of the footprint's left edge on its leg.
double left_edge(const RunSide& leg, const BracketKeys& keys) {
  const double x = keys.from == FromEnd::Left ? leg.board_from() + keys.at.mm()
                                              : leg.board_to() - keys.at.mm() - keys.width.mm();
  return x + leg.s_minus_x;
}

/// What to give for a bracket that ends beyond its board: a smaller distance, or a smaller bracket.
std::string at_most_words(Length board, Length size, const char* measure, Units units) {
  const Length step = units == Units::Inches ? inches(1.0 / 16) : mm(1);
  const auto rounded_down = [&](Length length) { return std::floor(length / step + 1e-9) * step; };
  if (size > board)
    return fmt::format("a bracket at most {} {}", exact(rounded_down(board), units), measure);
  return fmt::format("at most {} here", exact(rounded_down(board - size), units));
}

Refusals faults_of(const RunSide& leg, const Section& section, const BracketKeys& keys,
                   const std::string& table, const Job& job) {
  Refusals faults;
  const double board = leg.board_to() - leg.board_from();
  if (keys.at.mm() + keys.width.mm() > board + kSlack)
    faults.push_back(
        {Why::DoesNotFit,
         fmt::format("the bracket ends at {} on a board that is {} long on the inside, expected {}",
                     exact(keys.at + keys.width, job.units), exact(mm(board), job.units),
                     at_most_words(mm(board), keys.width, "wide", job.units)),
         job.places.of(table + ".at")});
  if (keys.down.mm() + keys.height.mm() > section.height_mm() + kSlack)
    faults.push_back(
        {Why::DoesNotFit,
         fmt::format("the bracket ends {} below the top of a board that is {} high, "
                     "expected {}",
                     exact(keys.down + keys.height, job.units),
                     exact(mm(section.height_mm()), job.units),
                     at_most_words(mm(section.height_mm()), keys.height, "high", job.units)),
         job.places.of(table + ".down")});
  return faults;
}

/// Whether the bumper turns, at one of a side's ends, on to the side of that name.
bool lies_next_to(const Wrap& wrap, const RunSide& leg, const std::string& name) {
  const Frame& frame = wrap.frame();
  const auto is = [&](int side) {
    return frame.sides()[static_cast<std::size_t>(side)].name == name;
  };
  return (leg.starts_at_corner && is(frame.previous(leg.side))) ||
         (leg.ends_at_corner && is(frame.next(leg.side)));
}

/// The one of the run's sides that a bracket is on. A bumper that goes once round the frame has two
/// boards on the side it starts and ends on: the bracket says which, or fits on only one.
Outcome<int> leg_of(const Wrap& wrap, const BracketKeys& keys, const std::string& table,
                    const Job& job) {
  const std::vector<RunSide>& legs = wrap.run().sides;
  const auto side = wrap.frame().side(keys.side);
  std::vector<int> on_side, chosen;
  for (int k = 0; k < static_cast<int>(legs.size()); ++k) {
    const RunSide& leg = legs[static_cast<std::size_t>(k)];
    if (!side || leg.side != *side) continue;
    on_side.push_back(k);
    if (keys.next_to.empty() ? faults_of(leg, wrap.section(), keys, table, job).empty()
                             : lies_next_to(wrap, leg, keys.next_to))
      chosen.push_back(k);
  }
  if (on_side.empty())
    return refuse(Why::UnknownName,
                  fmt::format("bumper \"{}\" has no board on side \"{}\", expected {}", keys.bumper,
                              keys.side, sides_of(wrap)),
                  job.places.of(table + ".side"));
  if (on_side.size() == 1) return on_side.front();
  if (chosen.size() == 1) return chosen.front();
  const Frame& frame = wrap.frame();
  const std::string choice = fmt::format(
      "\"{}\" or \"{}\"", frame.sides()[static_cast<std::size_t>(frame.previous(*side))].name,
      frame.sides()[static_cast<std::size_t>(frame.next(*side))].name);
  if (!keys.next_to.empty())
    return refuse(Why::UnknownName,
                  fmt::format("no board of bumper \"{}\" on side \"{}\" lies next to \"{}\", "
                              "expected next_to = {}",
                              keys.bumper, keys.side, keys.next_to, choice),
                  job.places.of(table + ".next_to"));
  if (chosen.empty()) return on_side.front();  // it fits on neither: the same fault on either
  return refuse(Why::Missing,
                fmt::format("bumper \"{}\" has two boards on side \"{}\", and the bracket fits on "
                            "both, expected next_to = {}: the side that its board lies next to",
                            keys.bumper, keys.side, choice),
                job.places.of(table + ".at"));
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
               const std::vector<Span>& spans, const BracketKeys& keys) {
  if (keys.cloth != BracketCloth::Under) return;
  for (const FlatPoint hole : keys.holes) {
    const FlatPoint at{laid.s + hole.x, u_on(flap, section, keys.down.mm() + hole.y)};
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
    if (keys.bumper != wrap.run().name) continue;
    const std::string table = fmt::format("bracket.{}", k);
    const auto chosen = leg_of(wrap, keys, table, job);
    if (!chosen) {
      faults.insert(faults.end(), chosen.error().begin(), chosen.error().end());
      continue;
    }
    const RunSide& leg = wrap.run().sides[static_cast<std::size_t>(*chosen)];
    if (Refusals wrong = faults_of(leg, section, keys, table, job); !wrong.empty()) {
      faults.insert(faults.end(), wrong.begin(), wrong.end());
      continue;
    }
    BracketOnPattern laid;
    laid.keys = static_cast<int>(k);
    laid.leg = *chosen;
    laid.side = keys.side;
    laid.s = left_edge(leg, keys);
    laid.width = keys.width.mm();
    laid.height = keys.height.mm();
    laid.cloth = keys.cloth;
    const double taken = taken_at_corners(wrap, job.cloth, laid.s + 0.5 * laid.width);
    const Flap top{true, section.back_edge_top() + taken, section.cloth_edge_top()};
    const Flap bottom{false, section.back_edge_bottom() - taken, section.cloth_edge_bottom()};
    laid.u = u_on(keys.down.mm() < section.flap_mm() ? top : bottom, section, keys.down.mm());
    lay_on_flap(laid, top, section, top_spans, keys);
    lay_on_flap(laid, bottom, section, bottom_spans, keys);
    lay_holes(laid, top, section, top_spans, keys);
    lay_holes(laid, bottom, section, bottom_spans, keys);
    brackets.push_back(std::move(laid));
  }
  if (!faults.empty()) return tl::unexpected(std::move(faults));
  return brackets;
}

}  // namespace swathe
