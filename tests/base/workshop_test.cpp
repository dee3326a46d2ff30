#include "base/workshop.hpp"

#include <doctest/doctest.h>

namespace swathe {

TEST_CASE("on a tape: the next mark up or down; what is on one stays") {
  for (const Rounding rounding : {Rounding::Up, Rounding::Down}) {
    CHECK(on_tape(inches(2 + 3.0 / 16), Units::Inches, rounding) == inches(2 + 3.0 / 16));
    CHECK(on_tape(mm(0.1) * 3 * 10, Units::Millimeters, rounding) == mm(3));
  }
  CHECK(on_tape(inches(2.0001), Units::Inches, Rounding::Up) == inches(2 + 1.0 / 16));
  CHECK(on_tape(inches(2.0624), Units::Inches, Rounding::Down) == inches(2));
  CHECK(on_tape(mm(41.01), Units::Millimeters, Rounding::Up) == mm(42));
  CHECK(on_tape(mm(41.99), Units::Millimeters, Rounding::Down) == mm(41));
  CHECK(on_tape(inches(-0.01), Units::Inches, Rounding::Up) == Length());
}

TEST_CASE("a board is sawn to the next sixteenth down, so that it fits") {
  CHECK(sawn(inches(14 + 1.9 / 16), Units::Inches) == "14 1/16");
  CHECK(sawn(inches(14 + 2.0 / 16), Units::Inches) == "14 1/8");
  CHECK(sawn(mm(355.9), Units::Millimeters) == "355");
  CHECK(sawn_with_unit(inches(0.75), Units::Inches) == "3/4 in");
  // What arithmetic has lost is no wood: three quarters less a billionth are three quarters.
  CHECK(sawn(inches(0.75 - 1e-9), Units::Inches) == "3/4");
}

TEST_CASE("a hole is told to the nearest thirty-second, or half a millimeter") {
  CHECK(marked(inches(23.0 / 32), Units::Inches) == "23/32");
  CHECK(marked(inches(2 + 1.4 / 32), Units::Inches) == "2 1/32");
  CHECK(marked(mm(18.3), Units::Millimeters) == "18.5");
}

}  // namespace swathe
