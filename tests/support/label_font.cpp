#include "support/label_font.hpp"

#include <doctest/doctest.h>

namespace swathe::test {

Font label_font() {
  auto font = Font::open(swathe::label_font());
  REQUIRE(font);
  return *font;
}

}  // namespace swathe::test
