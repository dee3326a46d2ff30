#include <doctest/doctest.h>

#include <string>

#include "base/embedded.hpp"
#include "swathe/type.hpp"

// Fonts that are open are not opened again, and what they give is the same.
namespace swathe {
namespace {

std::string bytes_of_face(const char* name) {
  const auto bundled = bundled_font(name);
  REQUIRE(bundled.has_value());
  return std::string(embedded(bundled->file));
}

TEST_CASE("open fonts: the same bytes and axes are opened once, whosever bytes they are") {
  OpenFonts fonts;
  const std::string saira = bytes_of_face("Saira"), anton = bytes_of_face("Anton");
  const std::map<std::string, double> narrow = {{"wdth", 50}};
  for (int time = 0; time < 3; ++time) {
    const std::string copy = saira;  // other memory, the same bytes
    CHECK(fonts.open(copy).has_value());
    CHECK(fonts.open(copy, narrow).has_value());
    CHECK(fonts.open(anton).has_value());
    CHECK(fonts.opened() == 3);
    CHECK(fonts.size() == 3);
  }
}

TEST_CASE("open fonts: what is kept draws as one opened anew, though its bytes are gone") {
  OpenFonts fonts;
  const std::map<std::string, double> axes = {{"wdth", 60}, {"wght", 700}};
  {
    const std::string lent = bytes_of_face("Saira");
    REQUIRE(fonts.open(lent, axes).has_value());
  }
  const std::string bytes = bytes_of_face("Saira");
  const auto kept = fonts.open(bytes, axes);
  const auto anew = Font::open(bytes, axes);
  REQUIRE(kept.has_value());
  REQUIRE(anew.has_value());
  CHECK(fonts.opened() == 1);
  CHECK(kept->font.name() == anew->name());
  CHECK(kept->font.text_width_mm("20486", 100) == anew->text_width_mm("20486", 100));
  CHECK(kept->font.text_width_mm("20486", 100) !=
        fonts.open(bytes)->font.text_width_mm("20486", 100));
}

TEST_CASE("open fonts: one that cannot be opened is refused each time, and not kept") {
  OpenFonts fonts;
  for (int time = 1; time <= 2; ++time) {
    const auto font = fonts.open("no font");
    REQUIRE_FALSE(font.has_value());
    CHECK(font.error().front().why == Why::BadFont);
    CHECK(fonts.size() == 0);
  }
  CHECK(fonts.open(bytes_of_face("Saira"), {{"nope", 1}}).error().front().why == Why::UnknownName);
}

TEST_CASE("open fonts: the one not asked for the longest goes; who holds it may go on with it") {
  OpenFonts fonts;
  const std::string bytes = bytes_of_face("Saira");
  const auto at = [&](std::size_t k) {
    return fonts.open(bytes, {{"wght", 400 + static_cast<double>(k)}});
  };
  const auto first = at(0);
  const auto second = at(1);
  const double width = second->font.text_width_mm("1", 10);
  for (std::size_t k = 2; k < OpenFonts::kMost; ++k) at(k);
  at(0);                 // asked for again: now the second is the oldest
  at(OpenFonts::kMost);  // one too many
  CHECK(fonts.size() == OpenFonts::kMost);
  CHECK(fonts.opened() == OpenFonts::kMost + 1);
  CHECK(second->font.text_width_mm("1", 10) == width);
  at(0);
  CHECK(fonts.opened() == OpenFonts::kMost + 1);
  at(1);
  CHECK(fonts.opened() == OpenFonts::kMost + 2);
}

}  // namespace
}  // namespace swathe
