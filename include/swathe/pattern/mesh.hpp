#pragma once

#include <array>
#include <string>
#include <vector>

#include "swathe/bumper/wrap.hpp"
#include "swathe/job/job.hpp"

namespace swathe {

/// A cover in space as triangles; every corner of a triangle knows its place on the cloth.
struct Mesh {
  std::string name;
  std::vector<SpacePoint> points;
  std::vector<ClothPoint> cloth;              ///< one for each point
  std::vector<std::array<int, 3>> triangles;  ///< counter-clockwise seen from outside
  std::vector<int> panel;                     ///< of each triangle: side of the run, or its bend
};

struct MeshOptions {
  int round_steps = 12;  ///< chords on each round of the section
  double along_mm = 60;  ///< longest step along the bumper
};

/// The cover on its bumper, from flap to flap and end face to end face; tongues and ears are folded
/// away and left out, windows not yet cut. One panel a side; a bent corner has one of its own.
///
/// Pleats and seams are shut, so that points on the two edges of a dart coincide in space and not
/// on the cloth; the pattern's notches are open.
/// Holds (mesh_test.cpp): (1) every point is at() its cloth place; (2) the edge lies on the
/// pattern's cut lines, the edges of its darts and its end faces, off them by no more than chords
/// of the dart's curve are; (3) the edges of a sewn dart are one curve from back edge to back edge.
Mesh make_mesh(const Wrap& wrap, const ClothKeys& cloth, const MeshOptions& options = {});

}  // namespace swathe
