#include <doctest/doctest.h>

#include "base/embedded.hpp"
#include "swathe/type.hpp"

using namespace swathe;

TEST_CASE("fonts: every bundled font opens and has all digits") {
  const auto fonts = bundled_fonts();
  REQUIRE(fonts.size() == 8);
  CHECK(fonts[0].name == "Anton");
  for (const BundledFont& entry : fonts) {
    CAPTURE(entry.name);
    const auto font = open_bundled(entry);
    REQUIRE(font);
    for (char32_t digit = U'0'; digit <= U'9'; ++digit) CHECK(font->has(digit));
  }
}

TEST_CASE("fonts: every numeral font in fonts-open is on the list, with its license") {
  std::size_t on_disk = 0;
  for (const Embedded& file : all_embedded()) {
    if (file.name.starts_with("fonts/")) ++on_disk;
  }
  CHECK(on_disk == bundled_fonts().size() + 1);  // and the label font
}

TEST_CASE("fonts: found by name, capitals or not") {
  CHECK(bundled_font("osp-din")->file == "fonts/osp-din/OSP-DIN.ttf");
  CHECK(bundled_font("SAIRA")->axes.at("wdth") == 60);
  CHECK(bundled_font("Big Shoulders Stencil")->note == "stencil");
  const auto wrong = bundled_font("Antonn");
  REQUIRE(!wrong);
  CHECK(wrong.error()[0].why == Why::UnknownName);
  CHECK(wrong.error()[0].sentence.find("\"Anton\"") != std::string::npos);
  CHECK(!bundled_font(""));
}

TEST_CASE("fonts: a job's axes go over the list's, one by one") {
  const auto saira = bundled_font("Saira");
  const auto font = open_bundled(*saira, {{"wdth", 75}});
  REQUIRE(font);
  for (const FontAxis& axis : font->axes()) {
    CHECK(axis.value == (axis.tag == "wdth" ? 75 : 900));
  }
  CHECK(!open_bundled(*saira, {{"wdth", 40}}));
}

TEST_CASE("fonts: labels have a font") {
  const auto font = Font::open(label_font());
  REQUIRE(font);
  CHECK(font->name() == "Cantarell Regular");
  for (const char32_t c : U"AZaz09 /.,:;()+-\u00d7\u00b0\u2013") {
    if (c) CHECK(font->has(c));
  }
}
