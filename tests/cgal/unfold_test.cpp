// The unfolding against an independent library: CGAL reads the OBJ file that the tool writes.
//
// Sources: exact geodesics, CGAL Surface_mesh_shortest_path (Xin and Wang's variant of Chen and
// Han's algorithm); flattening, CGAL LSCM parameterization (Levy, Petitjean, Ray and Maillot 2002).
// A cylinder's mesh with its edges along the rulings is itself developable: LSCM must give it back
// without strain, and only the chords across the rounds differ from the pattern, by an error that
// falls as 1/N^2.
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/measure.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/Surface_mesh_parameterization/Error_code.h>
#include <CGAL/Surface_mesh_parameterization/LSCM_parameterizer_3.h>
#include <CGAL/Surface_mesh_parameterization/parameterize.h>
#include <CGAL/Surface_mesh_shortest_path.h>
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <numbers>
#include <sstream>

#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "swathe/base.hpp"
#include "swathe/pattern.hpp"
#include "swathe/plane.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Surface = CGAL::Surface_mesh<Kernel::Point_3>;
using Vertex_index = Surface::Vertex_index;
using Halfedge_index = Surface::Halfedge_index;

/// One panel as CGAL sees it, and where its points lie on the cloth.
struct Panel {
  Surface surface;
  std::vector<FlatPoint> cloth;
};

/// The panels of a written OBJ file.
std::vector<Panel> read_panels(const std::string& obj) {
  std::vector<Kernel::Point_3> points;
  std::vector<FlatPoint> cloth;
  std::vector<Panel> panels;
  std::map<int, Vertex_index> seen;
  std::istringstream lines(obj);
  std::string text;
  while (std::getline(lines, text)) {
    std::istringstream words(text);
    std::string keyword, a, b, c;
    words >> keyword >> a >> b >> c;
    const auto number = [](const std::string& word) { return *parse_number(word); };
    if (keyword == "v") points.emplace_back(number(a), number(b), number(c));
    if (keyword == "vt") cloth.push_back({number(a), number(b)});
    if (keyword == "g") {
      panels.emplace_back();
      seen.clear();
    }
    if (keyword != "f") continue;
    std::array<Vertex_index, 3> corners;
    std::size_t k = 0;
    for (const std::string& word : {a, b, c}) {
      const int index = std::stoi(word.substr(0, word.find('/'))) - 1;
      if (!seen.contains(index)) {
        seen[index] = panels.back().surface.add_vertex(points[static_cast<std::size_t>(index)]);
        panels.back().cloth.push_back(cloth[static_cast<std::size_t>(index)]);
      }
      corners[k++] = seen[index];
    }
    REQUIRE(panels.back().surface.add_face(corners[0], corners[1], corners[2]) !=
            Surface::null_face());
  }
  return panels;
}

Job square_job() {
  Job job = test::worked_job();
  job.padding.corner = PaddingCorner::Mitred;
  return job;
}

std::vector<Panel> panels_of(int round_steps, std::size_t bumper = 0) {
  const Job job = square_job();
  const Mesh mesh = make_mesh(test::wraps_of(job)[bumper], job.cloth, {round_steps, 90.0});
  return read_panels(to_obj(mesh));
}

FlatPoint on_cloth(const Panel& panel, Vertex_index v) {
  return panel.cloth[static_cast<std::size_t>(v)];
}

double edge_on_cloth(const Panel& panel, Halfedge_index h) {
  return apart(on_cloth(panel, panel.surface.source(h)), on_cloth(panel, panel.surface.target(h)));
}

double edge_in_space(const Panel& panel, Halfedge_index h) {
  return std::sqrt(CGAL::squared_distance(panel.surface.point(panel.surface.source(h)),
                                          panel.surface.point(panel.surface.target(h))));
}

/// The point of the panel at a place of the cloth.
Vertex_index point_at(const Panel& panel, FlatPoint place) {
  for (const Vertex_index v : panel.surface.vertices())
    if (apart(on_cloth(panel, v), place) < 1e-3) return v;
  FAIL("no point of the panel lies there");
  return {};
}

/// Places of a coarse panel between lines that no dart reaches: there every straight line stays on
/// the cloth. Finer panels have a point at each of them too.
std::vector<FlatPoint> clear_places(const Panel& panel) {
  const double widest_dart = 4.0 * 25.4;  // half its width at the flaps is 3 1/4 in and a setback
  const plane::Box box = bounds(panel.cloth);
  std::vector<FlatPoint> places;
  for (const FlatPoint p : panel.cloth)
    if (p.x >= box.lo.x + widest_dart && p.x <= box.hi.x - widest_dart) places.push_back(p);
  return places;
}

/// Greatest relative error of geodesics between these places against straight lines on the pattern.
double geodesic_error(const Panel& panel, const std::vector<FlatPoint>& places) {
  using Traits = CGAL::Surface_mesh_shortest_path_traits<Kernel, Surface>;
  double worst = 0.0;
  for (const std::size_t start : {std::size_t{0}, places.size() / 3, places.size() / 2}) {
    CGAL::Surface_mesh_shortest_path<Traits> paths(panel.surface);
    paths.add_source_point(point_at(panel, places[start]));
    for (std::size_t k = 0; k < places.size(); k += 7) {
      const double straight = apart(places[start], places[k]);
      if (straight < 10.0) continue;
      const double geodesic =
          paths.shortest_distance_to_source_points(point_at(panel, places[k])).first;
      worst = std::max(worst, std::abs(geodesic - straight) / straight);
    }
  }
  return worst;
}

TEST_CASE(
    "geodesics on the written mesh are straight lines on the pattern, with an error of 1/N^2") {
  const std::vector<FlatPoint> places = clear_places(panels_of(6)[1]);
  REQUIRE(places.size() > 20);
  double before = 0.0;
  for (const int steps : {6, 12, 24}) {
    const double error = geodesic_error(panels_of(steps)[1], places);
    // A chord of a quarter round in N steps is short by (pi / 4N)^2 / 6 of its length.
    const double chord = std::pow(std::numbers::pi / (4 * steps), 2) / 6;
    CHECK(error < 1.1 * chord);
    if (before > 0.0) CHECK(before / error == doctest::Approx(4.0).epsilon(0.05));
    before = error;
  }
}

TEST_CASE("LSCM flattens each dart-free panel to the pattern") {
  double before = 0.0;
  for (const int steps : {6, 12}) {
    double worst_chord = 0.0;
    for (Panel& panel : panels_of(steps)) {
      namespace SMP = CGAL::Surface_mesh_parameterization;
      auto uv = panel.surface.add_property_map<Vertex_index, Kernel::Point_2>("v:uv").first;
      const Halfedge_index border =
          CGAL::Polygon_mesh_processing::longest_border(panel.surface).first;
      using Border = SMP::Two_vertices_parameterizer_3<Surface>;
      REQUIRE(SMP::parameterize(panel.surface, SMP::LSCM_parameterizer_3<Surface, Border>(), border,
                                uv) == SMP::OK);
      double flat_area = 0.0;
      for (const auto face : panel.surface.faces()) {
        const Halfedge_index h = panel.surface.halfedge(face);
        flat_area += CGAL::area(uv[panel.surface.source(h)], uv[panel.surface.target(h)],
                                uv[panel.surface.target(panel.surface.next(h))]);
      }
      const double scale =
          std::sqrt(CGAL::Polygon_mesh_processing::area(panel.surface) / std::abs(flat_area));
      for (const auto edge : panel.surface.edges()) {
        const Halfedge_index h = panel.surface.halfedge(edge);
        const double flat = scale * std::sqrt(CGAL::squared_distance(uv[panel.surface.source(h)],
                                                                     uv[panel.surface.target(h)]));
        const double space = edge_in_space(panel, h), cloth = edge_on_cloth(panel, h);
        // The mesh is written to 1e-6 mm; its shortest edges are a few mm.
        CHECK(std::abs(flat - space) / space < 1e-6);
        const FlatPoint way =
            on_cloth(panel, panel.surface.target(h)) - on_cloth(panel, panel.surface.source(h));
        if (std::abs(way.y) < 1e-5) {
          CHECK(std::abs(flat - cloth) / cloth < 1e-6);  // along a ruling
        } else {
          worst_chord = std::max(worst_chord, std::abs(flat - cloth) / cloth);
        }
      }
    }
    CHECK(worst_chord < 1.01 * std::pow(std::numbers::pi / (4 * steps), 2) / 6);
    if (before > 0.0) CHECK(before / worst_chord == doctest::Approx(4.0).epsilon(0.05));
    before = worst_chord;
  }
}

TEST_CASE("the two edges of a mitred dart are one space curve of the same length") {
  const std::vector<Panel> panels = panels_of(48);
  REQUIRE(panels.size() == 3);
  // The last column of one panel and the first of the next, row by row.
  const auto edge_of = [](const Panel& panel, bool right) {
    std::map<double, std::pair<double, Vertex_index>> rows;
    for (const Vertex_index v : panel.surface.vertices()) {
      const FlatPoint p = on_cloth(panel, v);
      const auto [row, fresh] = rows.try_emplace(p.y, p.x, v);
      if (!fresh && (right ? p.x > row->second.first : p.x < row->second.first))
        row->second = {p.x, v};
    }
    return rows;
  };
  const auto left = edge_of(panels[0], true), right = edge_of(panels[1], false);
  REQUIRE(left.size() == right.size());
  const Section section = test::section_of(square_job());
  double left_length = 0.0, right_length = 0.0, round = 0.0;
  auto l = left.begin(), r = right.begin();
  std::pair<double, double> last;
  for (; l != left.end(); ++l, ++r) {
    if (l->first < section.back_edge_bottom() + 8 || l->first > section.back_edge_top() - 8) {
      last = {};  // behind the notch's edge the cloth parts
      continue;
    }
    CHECK(std::sqrt(CGAL::squared_distance(panels[0].surface.point(l->second.second),
                                           panels[1].surface.point(r->second.second))) < 1e-5);
    if (last != std::pair<double, double>{}) {
      const double du = l->first - std::prev(l)->first;
      const double step = std::hypot(du, l->second.first - last.first);
      left_length += step;
      right_length += std::hypot(du, r->second.first - last.second);
      if (l->first > section.front_flat_top() + 1e-6 && l->first < section.top_tangent() + 1e-6)
        round += step;
    }
    last = {l->second.first, r->second.first};
  }
  CHECK(left_length == doctest::Approx(right_length).epsilon(1e-9));
  // A quarter of the ellipse with semi-axes r and r sqrt 2: 7.6403955781 r / 4, E(1/2)
  // = 1.3506438810 (Abramowitz and Stegun, Table 17.1, from memory; quadrature of the sine curve
  // agrees).
  CHECK(round == doctest::Approx(7.6403955781 / 4 * 1.25 * 25.4).epsilon(1e-4));
}

TEST_CASE("a bent corner is no isometry; its level lines keep their length") {
  Job job = square_job();
  job.padding.corner = PaddingCorner::Bent;
  const Wrap wrap = test::wraps_of(job)[0];
  const Section& section = wrap.section();
  const RunCorner& corner = wrap.run().corners[0];
  test::for_drawn_cases("bent-level", 50, [&](std::mt19937_64& rng) {
    const double u = test::drawn(rng, section.bottom_tangent(), section.top_tangent());
    const double h = wrap.dart(corner, u), reach = 120.0;
    // Quadrature of the level line in space, either side of the dart.
    double in_space = 0.0;
    std::optional<SpacePoint> last;
    constexpr int kSteps = 4000;
    for (int k = 0; k <= kSteps; ++k) {
      const double off = reach * (2.0 * k / kSteps - 1.0);
      const auto at = wrap.at({corner.s + off + (off < 0 ? -h : h), u});
      REQUIRE(at.has_value());
      if (last) in_space += apart(*last, *at);
      last = at;
    }
    CHECK(in_space == doctest::Approx(2 * reach).epsilon(1e-6));
  });
}

}  // namespace
}  // namespace swathe
