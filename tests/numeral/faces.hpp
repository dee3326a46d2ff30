#pragma once

#include <doctest/doctest.h>

#include <map>
#include <string>
#include <vector>

#include "swathe/base/embedded.hpp"
#include "swathe/type/face.hpp"

namespace swathe::test {

/// A face that comes with the program, at an instance meant for numerals.
struct BundledFace {
  const char* name;
  const char* file;
  std::map<std::string, double> axes;
};

inline const std::vector<BundledFace>& bundled_faces() {
  static const std::vector<BundledFace> faces = {
      {"Anton", "fonts/anton/Anton-Regular.ttf", {}},
      {"Saira 50 750", "fonts/saira/Saira[wdth,wght].ttf", {{"wdth", 50}, {"wght", 750}}},
      {"Saira 60 900", "fonts/saira/Saira[wdth,wght].ttf", {{"wdth", 60}, {"wght", 900}}},
      {"OSP-DIN", "fonts/osp-din/OSP-DIN.ttf", {}},
      {"Bebas Neue Bold", "fonts/bebas-neue/BebasNeue-Bold.otf", {}},
      {"Sofia Sans Extra Condensed Black",
       "fonts/sofia-sans-extra-condensed/SofiaSansExtraCondensed-Black.ttf",
       {}},
      {"Staatliches", "fonts/staatliches/Staatliches-Regular.ttf", {}},
      {"Big Shoulders Stencil",
       "fonts/big-shoulders-stencil/BigShouldersStencil[opsz,wght].ttf",
       {{"opsz", 72}, {"wght", 900}}},
      {"Saira Stencil One", "fonts/saira-stencil-one/SairaStencilOne-Regular.ttf", {}},
  };
  return faces;
}

inline Face opened(const BundledFace& bundled) {
  const auto face = Face::open(embedded(bundled.file), bundled.axes);
  REQUIRE(face.has_value());
  return *face;
}

}  // namespace swathe::test
