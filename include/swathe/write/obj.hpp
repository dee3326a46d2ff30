#pragma once

#include <string>

#include "swathe/pattern/mesh.hpp"

namespace swathe {

/// The mesh as a Wavefront OBJ file: millimeters, z up, texture coordinates are cloth coordinates
/// (s and u, millimeters), one group a panel.
std::string to_obj(const Mesh& mesh);

}  // namespace swathe
