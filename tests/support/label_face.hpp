#pragma once

#include <doctest/doctest.h>

#include "swathe/base/embedded.hpp"
#include "swathe/type/face.hpp"

namespace swathe::test {

/// The face that sheets are lettered in.
inline Face label_face() {
  auto face = Face::open(embedded("fonts/barlow/Barlow-Medium.ttf"));
  REQUIRE(face);
  return *face;
}

}  // namespace swathe::test
