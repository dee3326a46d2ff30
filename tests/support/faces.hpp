#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "swathe/type/faces.hpp"

namespace swathe::test {

/// The bundled faces as they are set by default, and the narrow instance of the variable one.
inline const std::vector<BundledFace>& numeral_faces() {
  static const std::vector<BundledFace> faces = [] {
    std::vector<BundledFace> all = bundled_faces();
    auto saira = bundled_face("Saira");
    REQUIRE(saira.has_value());
    saira->name = "Saira 50 750";
    saira->axes = {{"wdth", 50}, {"wght", 750}};
    all.push_back(*saira);
    return all;
  }();
  return faces;
}

inline const BundledFace& numeral_face(const std::string& name) {
  const auto& faces = numeral_faces();
  const auto found = std::find_if(faces.begin(), faces.end(),
                                  [&](const BundledFace& face) { return face.name == name; });
  REQUIRE(found != faces.end());
  return *found;
}

inline Face opened(const BundledFace& bundled) {
  const auto face = open_bundled(bundled);
  REQUIRE(face.has_value());
  return *face;
}

}  // namespace swathe::test
