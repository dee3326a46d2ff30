#include <algorithm>
#include <cmath>
#include <numeric>

#include "pattern/fastening.hpp"
#include "rules/practice.hpp"

namespace swathe {
namespace {

/// A footprint, its clearance around it, blocks a line of staples where a crown laid along the line
/// would touch it.
template <class HeightAt>
bool blocks(const Box& box, HeightAt u_at) {
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
  spans = less(spans, {-1.0, practice::kFromFreeEnd.mm()});
  spans = less(spans, {wrap.run().length - practice::kFromFreeEnd.mm(), wrap.run().length + 1.0});
  for (const RunCorner& corner : wrap.run().corners) {
    const double inside = corner.past + practice::kStaplerReach.mm();
    spans = less(spans, {corner.s - inside, corner.s + inside});
  }
  for (const BracketOnPattern& bracket : brackets) {
    const double clearance = keys[static_cast<std::size_t>(bracket.keys)].clearance.mm();
    const auto keep_out = [&](const Path& path, double grow) {
      if (!blocks(bounds(path).grown(grow), u_at)) return;
      const Box box = bounds(path).grown(grow + 0.5 * practice::kStapleCrown.mm());
      spans = less(spans, {box.lo.x, box.hi.x});
    };
    for (const Path& footprint : bracket.footprints) keep_out(footprint, clearance);
    for (const Path& window : bracket.windows) keep_out(window, 0.0);
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

}  // namespace

std::vector<Path> lay_strips(const Wrap& wrap, const ClothKeys& cloth,
                             const std::vector<BracketOnPattern>& brackets,
                             const std::vector<BracketKeys>& keys) {
  std::vector<Path> strips;
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
        strips.push_back(rectangle({span.from, std::min(edge, edge - out * width)},
                                   {span.to, std::max(edge, edge - out * width)}));
  }
  const EndOnPattern end = end_of(section, cloth, true);
  const double half = tongue_half_width(section), length = wrap.run().length;
  strips.push_back(rectangle({-end.tongue, -half}, {width - end.tongue, half}));
  strips.push_back(rectangle({length + end.tongue - width, -half}, {length + end.tongue, half}));
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
  // Driving order: from the middle of the longest run outwards, top and bottom in turn.
  const double middle = 0.5 * (longest.from + longest.to);
  for (auto& row : rows)
    std::ranges::stable_sort(row, [&](FlatPoint a, FlatPoint b) {
      const double off = std::abs(a.x - middle) - std::abs(b.x - middle);
      return std::abs(off) > 1e-6 ? off < 0 : a.x < b.x;
    });
  std::vector<Staple> staples;
  const auto drive = [&](FlatPoint at, bool upright) {
    staples.push_back({at, upright, static_cast<int>(staples.size()) + 1});
  };
  for (std::size_t k = 0; k < std::max(rows[0].size(), rows[1].size()); ++k)
    for (const auto& row : rows)
      if (k < row.size()) drive(row[k], false);
  // Then the tongues, on the boards' backs round the ends.
  const EndOnPattern end = end_of(section, cloth, true);
  const double half = tongue_half_width(section) - 0.5 * practice::kFromFreeEnd.mm();
  std::vector<FlatPoint> across;
  staple_span(across, {-half, half}, 0.0, spacing);
  for (const bool start : {true, false})
    for (const FlatPoint p : across) {
      const double out = end.tongue - 0.5 * cloth.end_reach.mm();
      drive({start ? -out : wrap.run().length + out, p.x}, true);
    }
  return staples;
}

}  // namespace swathe
