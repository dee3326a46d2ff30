#include "swathe/type/faces.hpp"

#include <doctest/doctest.h>

#include "swathe/base/embedded.hpp"

using namespace swathe;

TEST_CASE("faces: every bundled face opens and has all digits") {
  const auto faces = bundled_faces();
  REQUIRE(faces.size() == 8);
  CHECK(faces[0].name == "Anton");
  for (const BundledFace& entry : faces) {
    CAPTURE(entry.name);
    const auto face = open_bundled(entry);
    REQUIRE(face);
    for (char32_t digit = U'0'; digit <= U'9'; ++digit) CHECK(face->has(digit));
  }
}

TEST_CASE("faces: every numeral face in fonts-open is on the list, with its licence") {
  std::size_t on_disk = 0;
  for (const Embedded& file : all_embedded()) {
    if (file.name.starts_with("fonts/")) ++on_disk;
  }
  CHECK(on_disk == bundled_faces().size() + 1);  // and the label face
}

TEST_CASE("faces: found by name, capitals or not") {
  CHECK(bundled_face("osp-din")->file == "fonts/osp-din/OSP-DIN.ttf");
  CHECK(bundled_face("SAIRA")->axes.at("wdth") == 60);
  CHECK(bundled_face("Big Shoulders Stencil")->note == "stencil");
  const auto wrong = bundled_face("Antonn");
  REQUIRE(!wrong);
  CHECK(wrong.error()[0].why == Why::UnknownName);
  CHECK(wrong.error()[0].sentence.find("\"Anton\"") != std::string::npos);
  CHECK(!bundled_face(""));
}

TEST_CASE("faces: a job's axes go over the list's, one by one") {
  const auto saira = bundled_face("Saira");
  const auto face = open_bundled(*saira, {{"wdth", 75}});
  REQUIRE(face);
  for (const FaceAxis& axis : face->axes()) {
    CHECK(axis.value == (axis.tag == "wdth" ? 75 : 900));
  }
  CHECK(!open_bundled(*saira, {{"wdth", 40}}));
}

TEST_CASE("faces: labels have a face") {
  const auto face = Face::open(label_face());
  REQUIRE(face);
  CHECK(face->name() == "Cantarell Regular");
  for (const char32_t c : U"AZaz09 /.,:;()+-\u00d7\u00b0\u2013") {
    if (c) CHECK(face->has(c));
  }
}
