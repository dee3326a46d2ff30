#pragma once

#include <doctest/doctest.h>

#include "swathe/type/face.hpp"
#include "swathe/type/faces.hpp"

namespace swathe::test {

/// The face that sheets are lettered in.
inline Face label_face() {
  auto face = Face::open(swathe::label_face());
  REQUIRE(face);
  return *face;
}

}  // namespace swathe::test
