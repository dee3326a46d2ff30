#include <algorithm>
#include <cmath>
#include <numeric>

#include "pattern/fastening.hpp"

namespace swathe {
namespace {

/// A footprint blocks the staple line when a crown laid along it would touch the bracket's
/// clearance.
bool blocks(const Path& footprint, double clearance, double line_u) {
  const Box box = bounds(footprint).grown(clearance);
  return line_u > box.lo.y && line_u < box.hi.y;
}

std::vector<Span> less(std::vector<Span> spans, Span out) {
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

/// Where staples may stand along one flap.
std::vector<Span> stapled_spans(const Wrap& wrap, std::vector<Span> spans, double line_u,
                                const std::vector<BracketOnPattern>& brackets,
                                const std::vector<BracketKeys>& keys) {
  spans = less(std::move(spans), {-1.0, kEndKeepOut});
  spans = less(std::move(spans), {wrap.run().length - kEndKeepOut, wrap.run().length + 1.0});
  for (const RunCorner& corner : wrap.run().corners) {
    const double inside = corner.past + kCornerKeepOut;
    spans = less(std::move(spans), {corner.s - inside, corner.s + inside});
  }
  for (const BracketOnPattern& bracket : brackets) {
    const double clearance = keys[static_cast<std::size_t>(bracket.keys)].clearance.mm();
    const auto keep_out = [&](const Path& path, double grow) {
      if (!blocks(path, grow, line_u)) return;
      const Box box = bounds(path).grown(grow + 0.5 * kCrown);
      spans = less(std::move(spans), {box.lo.x, box.hi.x});
    };
    for (const Path& footprint : bracket.footprints) keep_out(footprint, clearance);
    for (const Path& window : bracket.windows) keep_out(window, 0.0);
  }
  return spans;
}

void staple_span(std::vector<FlatPoint>& into, Span span, double u, double spacing) {
  const int spaces = std::max(1, static_cast<int>(std::ceil(span.length() / spacing - 1e-9)));
  if (span.length() < kCrown) {
    into.push_back({0.5 * (span.from + span.to), u});
    return;
  }
  for (int k = 0; k <= spaces; ++k) into.push_back({span.from + span.length() * k / spaces, u});
}

}  // namespace

std::vector<Staple> lay_staples(const Wrap& wrap, const ClothKeys& cloth,
                                const std::vector<BracketOnPattern>& brackets,
                                const std::vector<BracketKeys>& keys) {
  const Section& section = wrap.section();
  const double spacing = cloth.staple_spacing.mm();
  std::vector<FlatPoint> rows[2];  // top, bottom
  Span longest;
  for (const bool top : {true, false}) {
    const double u = top ? section.back_edge_top() + cloth.staple_line.mm()
                         : section.back_edge_bottom() - cloth.staple_line.mm();
    for (const Span& span :
         stapled_spans(wrap, flap_spans(wrap, notches(wrap, cloth, top)), u, brackets, keys)) {
      staple_span(rows[top ? 0 : 1], span, u, spacing);
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
  const double half = tongue_half_width(section) - 0.5 * kEndKeepOut;
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
