#include <doctest/doctest.h>

#include <map>
#include <string>

#include "support/made.hpp"
#include "swathe/job.hpp"

// Which key a refusal is about, as set_value() takes it.
namespace swathe {
namespace {

const std::string kSound = R"([job]
title = "Covers"

[frame]
width = "28 in"
depth = "30 in"

[[bumper]]
name = "A"
from = ["front", "50%"]
to = ["back", "50%"]

[[bumper]]
name = "B"
from = ["back", "50%"]
to = ["front", "50%"]

[[bracket]]
bumper = "A"
side = "left"
at = ["9 in", "front"]
width = "3 in"
height = "1 1/2 in"
down = "1/2 in"
)";

/// The one fault of the sound job with some of its text replaced.
Refusal fault_with(const std::string& old, const std::string& put) {
  std::string text = kSound;
  const auto at = text.find(old);
  REQUIRE(at != std::string::npos);
  text.replace(at, old.size(), put);
  const auto made = test::make_text(text);
  REQUIRE_FALSE(made.has_value());
  CAPTURE(to_text(made.error().front()));
  REQUIRE(made.error().size() == 1);
  return made.error().front();
}

TEST_CASE("faults: the key of what is wrong") {
  REQUIRE(test::make_text(kSound).has_value());
  CHECK(fault_with("\"30 in\"", "\"30 feet of it\"").place.key == "frame.depth");
  CHECK(fault_with("\"1 1/2 in\"", "true").place.key == "bracket.1.height");
  CHECK(fault_with("to = [\"front\", \"50%\"]", "to = [\"front\", \"101%\"]").place.key ==
        "bumper.2.to.2");
  CHECK(fault_with("side = \"left\"", "side = \"top\"").place.key == "bracket.1.side");
}

TEST_CASE("faults: the key that is missing, or that nobody knows") {
  CHECK(fault_with("depth = \"30 in\"\n", "").place.key == "frame.depth");
  CHECK(fault_with("name = \"B\"\n", "").place.key == "bumper.2.name");
  CHECK(fault_with("width = \"3 in\"\n", "").place.key == "bracket.1.width");
  CHECK(fault_with("width = \"28 in\"\n", "width = \"28 in\"\nwidht = 3\n").place.key ==
        "frame.widht");
}

TEST_CASE("faults: of the geometry, at the key that would change it") {
  CHECK(fault_with("\"9 in\"", "\"40 in\"").place.key.starts_with("bracket.1"));
  CHECK(fault_with("from = [\"back\", \"50%\"]", "from = [\"back\", \"90 in\", \"left\"]")
            .place.key.starts_with("bumper.2.from"));
}

TEST_CASE("faults: outlines that meet are given the spacing that parts them") {
  const std::string text = "[job]\nnumber = \"20486\"\n" + kSound.substr(kSound.find("title")) +
                           "\n[numerals]\ncolor = \"#b5121b\"\noutline = \"3/4 in\"\n";
  const auto made = test::make_text(text);
  REQUIRE_FALSE(made.has_value());
  const Refusal& fault = made.error().front();
  CHECK(fault.place.key == "numerals.outline");
  REQUIRE(fault.mend.size() == 1);
  const auto mended = set_value(text, fault.mend[0].key, fault.mend[0].value);
  REQUIRE(mended.has_value());
  const auto again = test::make_text(mended->text);
  if (!again)
    for (const Refusal& other : again.error()) CHECK(other.place.key != "numerals.outline");
}

}  // namespace
}  // namespace swathe
