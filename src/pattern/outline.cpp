#include "pattern/outline.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "pattern/bare_end.hpp"
#include "pattern/filled_corner.hpp"

namespace swathe {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kSame = 1e-9;

/// Where the right edge of one notch meets the left edge of the next: by halving, since one rises
/// from its apex while the other falls to its own.
double crossing(const Notch& left, const Notch& right) {
  const double sign = left.cloth_edge > 0 ? 1.0 : -1.0;
  double lo = left.s, hi = right.s;
  for (int k = 0; k < 100; ++k) {
    const double middle = 0.5 * (lo + hi);
    (sign * left.edge_at(middle) < sign * right.edge_at(middle) ? lo : hi) = middle;
  }
  return 0.5 * (lo + hi);
}

/// The dart's edge less the seam allowance, from the point where the allowances would cross. A dart
/// narrower than its allowances is stitched uncut: its side is one point, on the back edge.
std::vector<FlatPoint> sewn_side(const Wrap& wrap, const RunCorner& corner, double seam, bool top) {
  constexpr int kSteps = 64;
  const Section& section = wrap.section();
  const double front = top ? section.front_flat_top() : section.front_flat_bottom();
  const double back = top ? section.back_edge_top() : section.back_edge_bottom();
  double lo = front,
         hi = back;  // the dart widens from nothing: halve to where it is one allowance wide
  for (int k = 0; k < 100; ++k) {
    const double middle = 0.5 * (lo + hi);
    (wrap.dart(corner, middle) < seam ? lo : hi) = middle;
  }
  // The edge curves on the round; behind it, it is straight between bends of the section.
  const double sign = top ? 1.0 : -1.0;
  const double tangent = top ? section.top_tangent() : section.bottom_tangent();
  std::vector<double> heights = {hi, back};
  for (int k = 1; k <= kSteps; ++k)
    if (sign * tangent > sign * hi) heights.push_back(hi + (tangent - hi) * k / kSteps);
  for (const double bend : section.bends())
    if (sign * bend > sign * hi && sign * bend < sign * back) heights.push_back(bend);
  std::ranges::sort(heights, [&](double a, double b) { return sign * a < sign * b; });
  std::vector<FlatPoint> side;
  for (const double u : heights) {
    const FlatPoint p{std::max(0.0, wrap.dart(corner, u) - seam), u};
    if (side.empty() || apart(side.back(), p) > 1e-6) side.push_back(p);
  }
  side.front().x = 0.0;
  return side;
}

/// The cloth's edge over or under the run: the notches' edges, those of flaps on the padding's back
/// and the cloth edge, whichever is nearest the front; points by rising s, without repeats.
std::vector<FlatPoint> flap_edge(const Wrap& wrap, const ClothKeys& cloth,
                                 const std::vector<Notch>& cuts, const std::vector<BareEnd>& bare,
                                 double cloth_edge) {
  const double sign = cloth_edge > 0 ? 1.0 : -1.0;
  const double length = wrap.run().length;
  const Span boards{wrap.run().bare(true), length - wrap.run().bare(false)};
  const Span flaps{flaps_begin(wrap, cloth, true), length - flaps_begin(wrap, cloth, false)};
  const double back = sign > 0 ? wrap.section().back_edge_top() : wrap.section().back_edge_bottom();
  std::vector<double> stops = {0.0, flaps.from, flaps.to, length};
  for (std::size_t k = 0; k < cuts.size(); ++k) {
    const Notch& cut = cuts[k];
    stops.insert(stops.end(), {cut.s - cut.half_width, cut.s + cut.half_width});
    for (const FlatPoint p : cut.side) stops.insert(stops.end(), {cut.s - p.x, cut.s + p.x});
    if (k + 1 < cuts.size() && cut.s + cut.half_width > cuts[k + 1].s - cuts[k + 1].half_width)
      stops.push_back(crossing(cut, cuts[k + 1]));
  }
  for (const BareEnd& end : bare) stops.push_back(end.board_end);
  std::ranges::sort(stops);
  const auto same_stop = [](double a, double b) { return b - a < 1e-6; };
  stops.erase(std::unique(stops.begin(), stops.end(), same_stop), stops.end());
  const auto edge = [&](double s) {
    const bool on_board = s >= boards.from && s <= boards.to;
    double u = on_board && (s < flaps.from || s > flaps.to) ? back : cloth_edge;
    for (const Notch& notch : cuts) u = sign * std::min(sign * u, sign * notch.edge_at(s));
    for (const BareEnd& end : bare)
      if (end.holds(s)) u = sign * std::min(sign * u, end.flap);
    return u;
  };
  std::vector<FlatPoint> points;
  const auto add = [&](FlatPoint p) {
    if (points.empty() || apart(points.back(), p) > kSame) points.push_back(p);
  };
  constexpr double kStep =
      1e-7;  // the edge jumps at a notch's side: look just before and just after
  for (const double s : stops) {
    if (s < -kSame || s > length + kSame) continue;
    const double before = edge(s - kStep), after = edge(s + kStep), on = edge(s);
    if (s > kStep) add({s, std::abs(before - on) < 1e-3 ? on : before});
    add({s, on});
    if (s < length - kStep) add({s, std::abs(after - on) < 1e-3 ? on : after});
  }
  return points;
}

}  // namespace

double tongue_half_width(const Section& section) {
  const double round = section.top_tangent() - section.front_flat_top();
  const double lean = section.at(section.top_tangent()).tilt;
  const double some_round =
      section.front_flat_top() + round * std::min(1.0, kTongueLeastLean / lean);
  return section.front_flat_top() >= 0.1 * section.height_mm() ? section.front_flat_top()
                                                               : some_round;
}

EndOnPattern end_of(const Wrap& wrap, const ClothKeys& cloth, bool start) {
  const Section& section = wrap.section();
  EndOnPattern end;
  end.start = start;
  end.tongue =
      section.depth_mm() + 0.5 * section.cloth_thickness_mm() * (kPi - 1) + cloth.end_reach.mm();
  end.ears = 0.5 * section.height_mm();
  end.past_board = wrap.run().bare(start);
  const double flaps = flaps_begin(wrap, cloth, start);
  if (flaps > end.past_board) end.flaps = flaps;
  if (end.past_board > 0.0) {
    // The tongue goes over the padding's end, along its back, down the board's end and on to the
    // board's back: three outward quarter turns, and one inward between padding and board.
    const double tau = section.cloth_thickness_mm();
    end.tongue = section.padding_depth_mm() + end.past_board + section.thickness_mm() +
                 tau * (0.75 * kPi - 1) + cloth.end_reach.mm();
    end.ears = std::min(end.ears, 0.5 * (section.padding_top_mm() - section.padding_bottom_mm()));
  }
  return end;
}

double flaps_begin(const Wrap& wrap, const ClothKeys& cloth, bool start) {
  const bool stapled = cloth.fixing == Fixing::Staples;
  return wrap.run().bare(start) + (stapled ? 0.0 : cloth.end_reach.mm() + kFlapShort);
}

plane::Polygon Notch::outline() const {
  plane::Polygon points = {{s - half_width, cloth_edge}, {s - half_width, back_edge}};
  for (auto p = side.rbegin(); p != side.rend(); ++p) points.push_back({s - p->x, p->y});
  for (const FlatPoint p : side) points.push_back({s + p.x, p.y});
  points.insert(points.end(), {{s + half_width, back_edge}, {s + half_width, cloth_edge}});
  const auto repeated = [](FlatPoint a, FlatPoint b) { return apart(a, b) < kSame; };
  points.erase(std::unique(points.begin(), points.end(), repeated), points.end());
  if (cloth_edge < 0) std::ranges::reverse(points);
  return points;
}

double Notch::edge_at(double at) const {
  const double off = std::abs(at - s);
  if (off > half_width + kSame) return cloth_edge;
  const auto after = std::ranges::upper_bound(side, off, {}, &FlatPoint::x);
  if (after == side.end()) return back_edge;
  if (after == side.begin()) return apex();
  const FlatPoint a = *std::prev(after), b = *after;
  return a.y + (b.y - a.y) * (off - a.x) / (b.x - a.x);
}

double Notch::half_at(double u) const {
  if (on_flap(u)) return half_width;
  const double sign = cloth_edge > 0 ? 1.0 : -1.0;
  const auto height = [&](FlatPoint p) { return sign * p.y; };
  const auto after = std::ranges::upper_bound(side, sign * u, {}, height);
  if (after == side.begin()) return 0.0;
  if (after == side.end()) return side.back().x;
  const FlatPoint a = *std::prev(after), b = *after;
  return a.x + (u - a.y) / (b.y - a.y) * (b.x - a.x);
}

std::vector<Notch> notches(const Wrap& wrap, const ClothKeys& cloth, bool top) {
  const double edge = top ? wrap.section().cloth_edge_top() : wrap.section().cloth_edge_bottom();
  std::vector<Notch> cuts;
  for (const RunCorner& corner : wrap.run().corners) {
    const Section& section = section_at(wrap, corner);
    const double back = top ? section.back_edge_top() : section.back_edge_bottom();
    const double apex =
        section.u_at_depth(section.thickness_mm() - cloth.cut_clear.mm(), top).value_or(back);
    const double half = dart_on_pattern(wrap, corner, back) + cloth.setback.mm();
    Notch notch{corner.s, half, back, edge, {{0.0, apex}, {half, back}}};
    notch.sewn = cloth.relief == Relief::Sewn;
    if (notch.sewn) notch.side = sewn_side(wrap, corner, cloth.seam.mm(), top);
    cuts.push_back(std::move(notch));
  }
  return cuts;
}

std::vector<Span> flap_spans(const Wrap& wrap, const ClothKeys& cloth,
                             const std::vector<Notch>& cuts) {
  std::vector<Span> spans;
  double from = flaps_begin(wrap, cloth, true);
  const double end = wrap.run().length - flaps_begin(wrap, cloth, false);
  const auto add = [&](double to) {
    if (to > from) spans.push_back({from, to});
  };
  for (const Notch& notch : cuts) {
    add(std::min(end, notch.s - notch.half_width));
    from = std::max(from, notch.s + notch.half_width);
  }
  add(end);
  return spans;
}

namespace {

/// What the outline has past an end face, from the bottom up: ears and tongue; x is how far out.
std::vector<FlatPoint> past_end(const Wrap& wrap, const ClothKeys& cloth, bool start) {
  const Section& section = wrap.section();
  const double half = tongue_half_width(section);
  const EndOnPattern end = end_of(wrap, cloth, start);
  const auto bare = bare_end(wrap, cloth, start);
  const double top = bare ? bare->fold : section.back_edge_top();
  const double bottom = bare ? -bare->fold : section.back_edge_bottom();
  return {{0, bottom},        {end.ears, bottom}, {end.ears, -half}, {end.tongue, -half},
          {end.tongue, half}, {end.ears, half},   {end.ears, top},   {0, top}};
}

}  // namespace

plane::Polygon cut_outline(const Wrap& wrap, const ClothKeys& cloth) {
  const Section& section = wrap.section();
  const double length = wrap.run().length;
  const std::vector<BareEnd> bare = bare_ends(wrap, cloth);

  plane::Polygon outline =
      flap_edge(wrap, cloth, notches(wrap, cloth, false), bare, section.cloth_edge_bottom());
  for (const FlatPoint p : past_end(wrap, cloth, false)) outline.push_back({length + p.x, p.y});
  std::vector<FlatPoint> over =
      flap_edge(wrap, cloth, notches(wrap, cloth, true), bare, section.cloth_edge_top());
  outline.insert(outline.end(), over.rbegin(), over.rend());
  const std::vector<FlatPoint> first_end = past_end(wrap, cloth, true);
  for (auto p = first_end.rbegin(); p != first_end.rend(); ++p) outline.push_back({-p->x, p->y});
  // Where no flap begins at the end face, the flap's corner belongs to the ear.
  const auto repeated = [](FlatPoint a, FlatPoint b) { return apart(a, b) < kSame; };
  outline.erase(std::unique(outline.begin(), outline.end(), repeated), outline.end());
  if (repeated(outline.front(), outline.back())) outline.pop_back();
  return outline;
}

std::vector<plane::Path> end_snips(const Wrap& wrap, const ClothKeys& cloth) {
  const Section& section = wrap.section();
  const double half = tongue_half_width(section), length = wrap.run().length;
  std::vector<plane::Path> snips;
  for (const bool start : {true, false}) {
    const EndOnPattern end = end_of(wrap, cloth, start);
    const auto bare = bare_end(wrap, cloth, start);
    // The round of an ear is cut into tabs that lean at most 30 degrees more than their neighbor.
    std::vector<double> heights;
    for (const double sign : {1.0, -1.0}) {
      double tangent = sign > 0 ? section.top_tangent() : section.bottom_tangent();
      if (bare && bare->round) tangent = sign * bare->fold;
      const auto lean_at = [&](double u) {
        return std::abs(bare ? section.bare_at(u).tilt : section.at(u).tilt);
      };
      const double lean = lean_at(tangent) - lean_at(sign * half);
      const int tabs = std::max(1, static_cast<int>(std::ceil(lean / (kPi / 6) - 1e-6)));
      for (int k = 0; k <= tabs; ++k)
        heights.push_back(sign * half + (tangent - sign * half) * k / tabs);
    }
    // The last tab of a round ear ends at the ear's own edge.
    if (bare && bare->round)
      std::erase_if(heights, [&](double u) { return std::abs(u) > bare->fold - kSame; });
    std::ranges::sort(heights);
    for (const double u : heights) {
      const double out =
          std::abs(std::abs(u) - half) < kSame ? std::min(end.ears, end.tongue) : end.ears;
      snips.push_back(start ? plane::line({-out, u}, {-kSnipShort, u})
                            : plane::line({length + kSnipShort, u}, {length + out, u}));
    }
  }
  for (plane::Path& slit : bare_slits(wrap, cloth)) snips.push_back(std::move(slit));
  return snips;
}

}  // namespace swathe
