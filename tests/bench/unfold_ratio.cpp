// The covers laid flat, and distances on them: our unrolling beside what CGAL does with the written
// mesh of the same covers, flattening by least squares and exact geodesics.
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/measure.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/Surface_mesh_parameterization/LSCM_parameterizer_3.h>
#include <CGAL/Surface_mesh_parameterization/parameterize.h>
#include <CGAL/Surface_mesh_shortest_path.h>

#include <cmath>
#include <cstdlib>
#include <map>

#include "example.hpp"
#include "least_seconds.hpp"
#include "ratios.hpp"
#include "swathe/pattern.hpp"

namespace swathe::bench {
namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Surface = CGAL::Surface_mesh<Kernel::Point_3>;
using Vertex = Surface::Vertex_index;

/// One panel as CGAL sees it, and where its points lie on the cloth.
struct Panel {
  Surface surface;
  std::vector<ClothPoint> cloth;
};

std::vector<Panel> panels_of(const Mesh& mesh) {
  std::map<int, Panel> panels;
  std::map<std::pair<int, int>, Vertex> seen;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    const int number = mesh.panel[t];
    Panel& panel = panels[number];
    std::array<Vertex, 3> corners;
    for (std::size_t k = 0; k < 3; ++k) {
      const int point = mesh.triangles[t][k];
      const auto [at, fresh] = seen.try_emplace({number, point});
      if (fresh) {
        const SpacePoint& p = mesh.points[static_cast<std::size_t>(point)];
        at->second = panel.surface.add_vertex({p.x, p.y, p.z});
        panel.cloth.push_back(mesh.cloth[static_cast<std::size_t>(point)]);
      }
      corners[k] = at->second;
    }
    if (panel.surface.add_face(corners[0], corners[1], corners[2]) == Surface::null_face())
      std::abort();
  }
  std::vector<Panel> list;
  for (auto& [number, panel] : panels) list.push_back(std::move(panel));
  return list;
}

void flatten(Panel& panel) {
  namespace Flat = CGAL::Surface_mesh_parameterization;
  using Border = Flat::Two_vertices_parameterizer_3<Surface>;
  auto uv = panel.surface.add_property_map<Vertex, Kernel::Point_2>("v:uv").first;
  const auto border = CGAL::Polygon_mesh_processing::longest_border(panel.surface).first;
  if (Flat::parameterize(panel.surface, Flat::LSCM_parameterizer_3<Surface, Border>(), border,
                         uv) != Flat::OK)
    std::abort();
}

/// From the panel's first point to all its others.
double geodesics(const Panel& panel) {
  using Traits = CGAL::Surface_mesh_shortest_path_traits<Kernel, Surface>;
  CGAL::Surface_mesh_shortest_path<Traits> paths(panel.surface);
  paths.add_source_point(*panel.surface.vertices().begin());
  double sum = 0;
  for (const Vertex v : panel.surface.vertices())
    sum += paths.shortest_distance_to_source_points(v).first;
  return sum;
}

double on_the_cloth(const Panel& panel) {
  double sum = 0;
  for (const ClothPoint& p : panel.cloth)
    sum += std::hypot(p.s - panel.cloth.front().s, p.u - panel.cloth.front().u);
  return sum;
}

}  // namespace

std::vector<Ratio> unfold_ratios() {
  const Made made = made_example();
  std::vector<Panel> panels;
  for (const Wrap& wrap : made.wraps)
    for (Panel& panel : panels_of(make_mesh(wrap, made.job.cloth)))
      panels.push_back(std::move(panel));
  double sum = 0;
  const double patterns = least_seconds(20, [&] {
    for (const Wrap& wrap : made.wraps) sum += make_pattern(wrap, made.job)->cloth_length;
  });
  const double flattened = least_seconds(3, [&] {
    for (Panel panel : panels) flatten(panel);
  });
  constexpr int kTimes = 1000;  // one alone is too short to time
  const double straight = least_seconds(3, [&] {
    for (int k = 0; k < kTimes; ++k)
      for (const Panel& panel : panels) sum += on_the_cloth(panel);
  });
  const double walked = least_seconds(1, [&] {
    for (const Panel& panel : panels) sum += geodesics(panel);
  });
  if (sum <= 0) std::abort();
  return {{"all covers laid flat, darts and notches in", patterns, "CGAL, LSCM of their meshes",
           flattened},
          {"distances on the cloth to every point of the mesh", straight / kTimes,
           "CGAL, exact geodesics", walked}};
}

}  // namespace swathe::bench
