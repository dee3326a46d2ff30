#include <algorithm>
#include <cmath>
#include <iterator>

#include "pattern/fastening.hpp"
#include "rules/practice.hpp"

namespace swathe {
namespace {

/// A footprint, its clearance around it, blocks a line of staples where a crown laid along the line
/// would touch it.
template <class HeightAt>
bool blocks(const plane::Box& box, HeightAt u_at) {
  const auto [low, high] = std::minmax({u_at(box.lo.x), u_at(box.middle().x), u_at(box.hi.x)});
  return high > box.lo.y && low < box.hi.y;
}

std::vector<Span> less(const std::vector<Span>& spans, Span out) {
  std::vector<Span> left;
  for (const Span& span : spans) {
    if (out.to <= span.from || out.from >= span.to) {
      left.push_back(span);
      continue;
    }
    if (out.from > span.from) left.push_back({span.from, out.from});
    if (out.to < span.to) left.push_back({out.to, span.to});
  }
  return left;
}

/// Where staples may stand along one flap, on a line at height `u_at(s)`.
template <class HeightAt>
std::vector<Span> stapled_spans(const Wrap& wrap, std::vector<Span> spans, HeightAt u_at,
                                const std::vector<BracketOnPattern>& brackets,
                                const std::vector<BracketKeys>& keys) {
  const double first = wrap.run().bare(true), last = wrap.run().length - wrap.run().bare(false);
  spans = less(spans, {first - 1.0, first + practice::kFromFreeEnd.mm()});
  spans = less(spans, {last - practice::kFromFreeEnd.mm(), last + 1.0});
  for (const RunCorner& corner : wrap.run().corners) {
    const double inside = corner.past + practice::kStaplerReach.mm();
    spans = less(spans, {corner.s - inside, corner.s + inside});
  }
  for (const BracketOnPattern& bracket : brackets) {
    const double clearance = keys[static_cast<std::size_t>(bracket.keys)].clearance.mm();
    const auto keep_out = [&](const plane::Box& part, double grow) {
      if (!blocks(part.grown(grow), u_at)) return;
      const plane::Box box = part.grown(grow + 0.5 * practice::kStapleCrown.mm());
      spans = less(spans, {box.lo.x, box.hi.x});
    };
    for (const plane::Path& footprint : bracket.footprints) keep_out(bounds(footprint), clearance);
    for (const plane::Path& window : bracket.windows) keep_out(bounds(window), 0.0);
    for (const Punch& hole : bracket.holes)  // a bracket's screws may stand beside it
      keep_out(plane::Box{hole.at, hole.at}.grown(hole.radius), clearance);
  }
  return spans;
}

/// The same for a strip that covers the flap between two heights.
std::vector<Span> strip_spans(const Wrap& wrap, const std::vector<Span>& spans, double near,
                              double far, const std::vector<BracketOnPattern>& brackets,
                              const std::vector<BracketKeys>& keys) {
  std::vector<Span> clear = spans;
  for (const double u : {near, 0.5 * (near + far), far})
    clear = stapled_spans(
        wrap, clear, [&](double) { return u; }, brackets, keys);
  return clear;
}

void staple_span(std::vector<FlatPoint>& into, Span span, double u, double spacing) {
  const int spaces = std::max(1, static_cast<int>(std::ceil(span.length() / spacing - 1e-9)));
  if (span.length() < practice::kStapleCrown.mm()) {
    into.push_back({0.5 * (span.from + span.to), u});
    return;
  }
  for (int k = 0; k <= spaces; ++k) into.push_back({span.from + span.length() * k / spaces, u});
}

/// Heights off the middle, within `half`, at which a part of a tongue is clear of brackets. It lies
/// on the back, `in` from the board's end, and is `crown` high.
std::vector<Span> tongue_spans(const Wrap& wrap, const std::vector<BracketOnPattern>& brackets,
                               const std::vector<BracketKeys>& keys, bool start, Span in,
                               double half, double crown) {
  const double bare = wrap.run().bare(start), middle = 0.5 * wrap.section().height_mm();
  const double length = wrap.run().length;
  const Span part = start ? Span{bare + in.from, bare + in.to}
                          : Span{length - bare - in.to, length - bare - in.from};
  std::vector<Span> spans = {{-half, half}};
  for (const BracketOnPattern& laid : brackets) {
    const BracketKeys& bracket = keys[static_cast<std::size_t>(laid.keys)];
    const double clearance = bracket.clearance.mm();
    // On the back, up from its middle.
    const auto keep_out = [&](Span along, Span up) {
      if (part.to <= along.from - clearance || part.from >= along.to + clearance) return;
      const double grow = clearance + 0.5 * crown;
      spans = less(spans, {up.from - grow, up.to + grow});
    };
    const double top = middle - bracket.down.mm();
    keep_out({laid.s, laid.s + laid.width}, {top - laid.height, top});
    for (const FlatPoint hole : bracket.holes) {
      const double radius = 0.5 * practice::kPunch.mm();
      keep_out({laid.s + hole.x - radius, laid.s + hole.x + radius},
               {top - hole.y - radius, top - hole.y + radius});
    }
  }
  return spans;
}

/// Heights of a tongue's staples off the middle.
std::vector<FlatPoint> tongue_staples(const Wrap& wrap, const ClothKeys& cloth,
                                      const std::vector<BracketOnPattern>& brackets,
                                      const std::vector<BracketKeys>& keys, bool start) {
  // Where padding is much higher than its board, a tongue reaches past that; no crown may.
  const Section& section = wrap.section();
  const double on_board = 0.5 * (section.height_mm() - practice::kStapleCrown.mm());
  const double half =
      std::min(tongue_half_width(section), on_board) - 0.5 * practice::kFromFreeEnd.mm();
  const double in = 0.5 * cloth.end_reach.mm();
  std::vector<FlatPoint> across;
  for (const Span& span :
       tongue_spans(wrap, brackets, keys, start, {in, in}, half, practice::kStapleCrown.mm()))
    staple_span(across, span, 0.0, cloth.staple_spacing.mm());
  return across;
}

/// Staples in the order in which they are driven.
class Drive {
 public:
  std::vector<Staple> staples;

  /// From the middle of the longest stretch outwards.
  Drive(const Wrap& wrap, double middle)
      : wrap_(wrap), middle_(middle), first_leg_(wrap.side_of(middle)) {}

  /// Side by side from the first one's, so that corners can be folded one after another; on each
  /// from the middle outwards, top and bottom in turn.
  void flaps(std::vector<FlatPoint> (&rows)[2]) {
    int most = 0;
    for (auto& row : rows) {
      std::ranges::stable_sort(row, [&](FlatPoint a, FlatPoint b) {
        if (corners_to(a) != corners_to(b)) return corners_to(a) < corners_to(b);
        const double off = std::abs(a.x - middle_) - std::abs(b.x - middle_);
        return std::abs(off) > 1e-6 ? off < 0 : a.x < b.x;
      });
      if (!row.empty()) most = std::max(most, corners_to(row.back()));
    }
    for (int corners = 0; corners <= most; ++corners) {
      std::vector<FlatPoint> beyond[2];
      for (std::size_t k = 0; k < 2; ++k)
        std::ranges::copy_if(rows[k], std::back_inserter(beyond[k]),
                             [&](FlatPoint p) { return corners_to(p) == corners; });
      for (std::size_t k = 0; k < std::max(beyond[0].size(), beyond[1].size()); ++k)
        for (const auto& row : beyond)
          if (k < row.size()) add(row[k], false, Staple::On::Flap, corners);
    }
  }

  /// One through each, into the middle of the board's end, half as far down as the ear reaches.
  /// None where padding runs past its board: there is no wood behind them, and the tongue holds
  /// them.
  void ears(const EndOnPattern& end) {
    if (end.past_board > 0.0) return;
    const Section& section = wrap_.section();
    const double in = 0.5 * section.thickness_mm(), out = 0.5 * end.ears;
    for (const bool top : {true, false})
      if (const auto u = section.u_at_depth(in, top))
        add({end.start ? -out : wrap_.run().length + out, *u}, false, Staple::On::Ear, 0);
  }

  void tongue(bool start, const ClothKeys& cloth, const std::vector<FlatPoint>& across) {
    const double out = end_of(wrap_, cloth, start).tongue - 0.5 * cloth.end_reach.mm();
    for (const FlatPoint p : across)
      add({start ? -out : wrap_.run().length + out, p.x}, true, Staple::On::Tongue, 0);
  }

 private:
  void add(FlatPoint at, bool upright, Staple::On on, int corners) {
    staples.push_back({at, upright, static_cast<int>(staples.size()) + 1, on, corners});
  }
  int corners_to(FlatPoint p) const { return std::abs(wrap_.side_of(p.x) - first_leg_); }

  const Wrap& wrap_;
  double middle_;
  int first_leg_;
};

}  // namespace

std::vector<plane::Path> lay_strips(const Wrap& wrap, const ClothKeys& cloth,
                                    const std::vector<BracketOnPattern>& brackets,
                                    const std::vector<BracketKeys>& keys) {
  std::vector<plane::Path> strips;
  if (cloth.fixing != Fixing::HookAndLoop) return strips;
  const Section& section = wrap.section();
  const double width = cloth.hook_and_loop.strip.mm();
  for (const bool top : {true, false}) {
    const double out = top ? 1.0 : -1.0;
    const double edge =
        (top ? section.cloth_edge_top() : section.cloth_edge_bottom()) - out * hem_of(cloth);
    for (const Span& span : strip_spans(wrap, flap_spans(wrap, cloth, notches(wrap, cloth, top)),
                                        edge - out * width, edge, brackets, keys))
      if (span.length() > practice::kStapleCrown.mm())
        strips.push_back(plane::rectangle({span.from, std::min(edge, edge - out * width)},
                                          {span.to, std::max(edge, edge - out * width)}));
  }
  const double half = tongue_half_width(section), reach = cloth.end_reach.mm();
  for (const bool start : {true, false}) {
    const double tip = end_of(wrap, cloth, start).tongue;
    const double from = start ? -tip : wrap.run().length + tip - width;
    for (const Span& span :
         tongue_spans(wrap, brackets, keys, start, {reach - width, reach}, half, 0.0))
      if (span.length() > practice::kStapleCrown.mm())
        strips.push_back(plane::rectangle({from, span.from}, {from + width, span.to}));
  }
  return strips;
}

double hem_of(const ClothKeys& cloth) {
  return cloth.fixing == Fixing::HookAndLoop ? cloth.hook_and_loop.hem.mm() : 0.0;
}

std::vector<HemFold> hem_folds(const Wrap& wrap, const ClothKeys& cloth) {
  std::vector<HemFold> folds;
  if (cloth.fixing != Fixing::HookAndLoop) return folds;
  for (const bool top : {true, false}) {
    const double out = top ? 1.0 : -1.0;
    const double u = (top ? wrap.section().cloth_edge_top() : wrap.section().cloth_edge_bottom()) -
                     out * hem_of(cloth);
    for (const Span& span : flap_spans(wrap, cloth, notches(wrap, cloth, top)))
      folds.push_back({{span.from, u}, {span.to, u}, top});
  }
  return folds;
}

std::vector<Staple> lay_staples(const Wrap& wrap, const ClothKeys& cloth,
                                const std::vector<BracketOnPattern>& brackets,
                                const std::vector<BracketKeys>& keys) {
  if (cloth.fixing != Fixing::Staples) return {};
  const Section& section = wrap.section();
  const double spacing = cloth.staple_spacing.mm();
  std::vector<FlatPoint> rows[2];  // top, bottom
  Span longest;
  for (const bool top : {true, false}) {
    const double edge = top ? section.back_edge_top() : section.back_edge_bottom();
    const auto u_at = [&](double s) {  // as far from the board's edge at a corner as elsewhere
      return edge +
             (top ? 1.0 : -1.0) * (cloth.staple_line.mm() + taken_at_corners(wrap, cloth, s));
    };
    for (const Span& span : stapled_spans(wrap, flap_spans(wrap, cloth, notches(wrap, cloth, top)),
                                          u_at, brackets, keys)) {
      std::vector<FlatPoint> row;
      staple_span(row, span, 0.0, spacing);
      for (const FlatPoint p : row) rows[top ? 0 : 1].push_back({p.x, u_at(p.x)});
      if (span.length() > longest.length() + 1e-9) longest = span;
    }
  }
  Drive drive(wrap, 0.5 * (longest.from + longest.to));
  drive.flaps(rows);
  for (const bool start : {true, false}) drive.ears(end_of(wrap, cloth, start));
  for (const bool start : {true, false})
    drive.tongue(start, cloth, tongue_staples(wrap, cloth, brackets, keys, start));
  return drive.staples;
}

}  // namespace swathe
