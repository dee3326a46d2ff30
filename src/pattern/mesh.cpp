#include "swathe/pattern/mesh.hpp"

#include <algorithm>
#include <cmath>

namespace swathe {
namespace {

constexpr double kSame = 1e-9;

/// Heights on the girth at which rows of points lie: every bend of the section, and the rounds in
/// steps.
std::vector<double> rows_of(const Section& section, int round_steps) {
  std::vector<double> rows = {section.cloth_edge_bottom(), section.cloth_edge_top()};
  for (const Station& station : section.stations()) rows.push_back(station.u_mm);
  const auto round = [&](double from, double to) {
    for (int k = 0; k <= round_steps; ++k) rows.push_back(from + (to - from) * k / round_steps);
  };
  round(section.front_flat_top(), section.top_tangent());
  round(section.bottom_tangent(), section.front_flat_bottom());
  for (const double bend : section.bends())  // both ends of the small arcs at the board's edges
    rows.push_back(bend);
  std::ranges::sort(rows);
  rows.erase(std::unique(rows.begin(), rows.end(), [](double a, double b) { return b - a < 1e-6; }),
             rows.end());
  return rows;
}

/// The cloth taken at a corner at height u: the dart, or the notch behind it where that is wider.
double taken(const Wrap& wrap, const RunCorner& corner, const ClothKeys& cloth, double u) {
  const Section& section = wrap.section();
  const bool top = u > 0;
  const double back = top ? section.back_edge_top() : section.back_edge_bottom();
  const double apex =
      section.u_at_depth(section.thickness_mm() - cloth.cut_clear.mm(), top).value_or(back);
  const double full = wrap.dart(corner, back) + cloth.setback.mm();
  const double share =
      std::abs(back - apex) < kSame ? 1.0 : std::clamp((u - apex) / (back - apex), 0.0, 1.0);
  return std::max(wrap.dart(corner, u), share * full);
}

/// A grid of points between a left and a right edge, row by row.
template <class Left, class Right>
void add_panel(Mesh& mesh, const Wrap& wrap, int panel, const std::vector<double>& rows,
               int columns, Left left, Right right) {
  const int first = static_cast<int>(mesh.points.size());
  for (const double u : rows)
    for (int c = 0; c <= columns; ++c) {
      const double from = left(u), to = right(u);
      const ClothPoint p{from + (to - from) * c / columns, u};
      const std::optional<SpacePoint> at = wrap.at(p);
      mesh.cloth.push_back(p);
      mesh.points.push_back(at.value_or(SpacePoint{}));
    }
  for (int r = 0; r + 1 < static_cast<int>(rows.size()); ++r)
    for (int c = 0; c < columns; ++c) {
      const int a = first + r * (columns + 1) + c, b = a + 1, d = a + columns + 1, e = d + 1;
      mesh.triangles.push_back({a, b, e});
      mesh.triangles.push_back({a, e, d});
      mesh.panel.insert(mesh.panel.end(), 2, panel);
    }
}

}  // namespace

Mesh make_mesh(const Wrap& wrap, const ClothKeys& cloth, const MeshOptions& options) {
  Mesh mesh;
  mesh.name = wrap.run().name;
  const std::vector<double> rows = rows_of(wrap.section(), options.round_steps);
  const std::vector<RunCorner>& corners = wrap.run().corners;
  const bool bent = wrap.corner_kind() == PaddingCorner::Bent;
  const auto bend_at = [&](const RunCorner& corner, double u) {
    const double out = std::max(0.0, wrap.section().at(u).d - wrap.section().thickness_mm());
    return bent ? out * 0.5 * corner.turn : 0.0;
  };
  for (std::size_t k = 0; k < wrap.run().sides.size(); ++k) {
    const auto left = [&](double u) {
      return k == 0 ? 0.0
                    : corners[k - 1].s + taken(wrap, corners[k - 1], cloth, u) +
                          bend_at(corners[k - 1], u);
    };
    const auto right = [&](double u) {
      return k == corners.size()
                 ? wrap.run().length
                 : corners[k].s - taken(wrap, corners[k], cloth, u) - bend_at(corners[k], u);
    };
    // A side so short that its notches meet has no flap there: its rows end where they do.
    std::vector<double> whole;
    for (const double u : rows)
      if (right(u) - left(u) > kSame) whole.push_back(u);
    if (whole.size() < 2) continue;
    const double length = right(0.0) - left(0.0);
    const int columns = std::max(1, static_cast<int>(std::ceil(length / options.along_mm)));
    add_panel(mesh, wrap, static_cast<int>(2 * k), whole, columns, left, right);
    if (!bent || k >= corners.size()) continue;
    const RunCorner& corner = corners[k];
    std::vector<double> round;
    for (const double u : rows)
      if (bend_at(corner, u) > kSame) round.push_back(u);
    if (round.size() < 2) continue;
    add_panel(
        mesh, wrap, static_cast<int>(2 * k + 1), round, options.round_steps,
        [&](double u) { return corner.s - wrap.dart(corner, u) - bend_at(corner, u); },
        [&](double u) { return corner.s - wrap.dart(corner, u); });
    add_panel(
        mesh, wrap, static_cast<int>(2 * k + 1), round, options.round_steps,
        [&](double u) { return corner.s + wrap.dart(corner, u); },
        [&](double u) { return corner.s + wrap.dart(corner, u) + bend_at(corner, u); });
  }
  return mesh;
}

}  // namespace swathe
