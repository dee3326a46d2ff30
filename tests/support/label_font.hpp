#pragma once

#include <doctest/doctest.h>

#include "swathe/type.hpp"

namespace swathe::test {

/// The font that sheets are lettered in.
inline Font label_font() {
  auto font = Font::open(swathe::label_font());
  REQUIRE(font);
  return *font;
}

}  // namespace swathe::test
