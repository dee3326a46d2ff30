#include <doctest/doctest.h>

#include <cmath>

#include "swathe/type.hpp"
#include "type/debian_fonts.hpp"

using namespace swathe;
using namespace swathe::test;

namespace {

std::string letters_only() { return file_bytes(SWATHE_TEST_DATA "/type/data/letters.ttf"); }

}  // namespace

TEST_CASE("digits: the shortest digit used has the height asked for") {
  // Source: fontTools 4.38 on DejaVu Sans Bold 2.37: flat digits are 1493 units high, the 0 1549
  // (1.0375 as much: 4.1500 in at 4 in), advances 1425 (3.817816 in at 4 in).
  const std::string bytes = file_bytes(kDejaVu);
  const auto font = Font::open(bytes);
  REQUIRE(font);
  const auto line = set_digits(*font, "107", 101.6);
  REQUIRE(line);
  CHECK(line->em == doctest::Approx(5.486939 * 25.4).epsilon(1e-6));
  CHECK(line->shape('1').ink.height() == doctest::Approx(101.6).epsilon(1e-6));
  CHECK(std::abs(line->shape('0').ink.height() - 4.15 * 25.4) < 0.02);
  CHECK(line->shape('7').advance == doctest::Approx(3.817816 * 25.4).epsilon(1e-6));
  // Ink from the left of the 1 (231) to the right of the 7 (1262), two advances on.
  const double mm_per_unit = 101.6 / 1493;
  CHECK(std::abs(line->ink.width() - (2 * 1425 + 1262 - 231) * mm_per_unit) < 0.02);
  // Alone, the 0 is the shortest.
  CHECK(set_digits(*font, "00", 101.6)->shape('0').ink.height() == doctest::Approx(101.6));
}

TEST_CASE("digits: kerning, tabular figures and extra space") {
  // Source: hb-shape 6.0.0 on Inter Bold 4.0 beta 7: the 7 before a 4 is 1511 wide, 1920 tabular
  // figures, of an em of 2816.
  const std::string bytes = file_bytes(kInter);
  const auto font = Font::open(bytes);
  REQUIRE(font);
  const auto second_at = [&](DigitSpacing spacing) {
    const auto line = set_digits(*font, "74", 100, spacing);
    REQUIRE(line);
    return line->places[1].origin.x / line->em * 2816;
  };
  CHECK(second_at({}) == doctest::Approx(1511).epsilon(1e-5));
  CHECK(second_at({.tabular = true}) == doctest::Approx(1920).epsilon(1e-5));
  const auto wide = set_digits(*font, "74", 100, {.extra = 7});
  const auto plain = set_digits(*font, "74", 100);
  CHECK(wide->ink.width() == doctest::Approx(plain->ink.width() + 7));
}

TEST_CASE("digits: islands") {
  const std::vector<int> islands = {1, 0, 0, 0, 1, 0, 1, 0, 2, 1};
  const std::string bytes = file_bytes(kDejaVu);
  const auto font = Font::open(bytes);
  REQUIRE(font);
  const auto line = set_digits(*font, "0123456789", 100);
  const auto stencil = set_digits(*open_bundled(*bundled_font("Saira Stencil One")), "0689", 100);
  for (const DigitOutline& shape : line->shapes) {
    CHECK(shape.counters() == islands[static_cast<std::size_t>(shape.digit - '0')]);
  }
  for (const DigitOutline& shape : stencil->shapes) CHECK(shape.counters() == 0);
}

TEST_CASE("digits: what would take minutes or gigabytes is refused, and said why") {
  // Made by tests/support/odd_fonts.py; what is counted here is how they were drawn.
  struct Odd {
    const char* file;
    const char* said;
  };
  for (const Odd& odd :
       {Odd{"curves-5002.ttf",
            "the 8 of the font Odd Regular has 5004 curves, expected at most 5000"},
        Odd{"crossing-curves.ttf", "straight edges, expected at most 6000"},
        Odd{"random-points.ttf", "times as long as the digit is large, expected at most 60 times"},
        Odd{"comb.ttf", "has corners that come to 400 full turns, expected at most 60"},
        Odd{"stacked.ttf", "crosses or touches itself in more than 500 places"},
        Odd{"wide.ttf",
            "is 3.1 times as large as its shortest digit is high, expected at most 3"}}) {
    CAPTURE(odd.file);
    const std::string bytes =
        file_bytes(std::string(SWATHE_TEST_DATA "/fuzz/corpus/font/") + odd.file);
    const auto font = Font::open(bytes);
    REQUIRE(font);
    const auto line = set_digits(*font, "8", 101.6);
    REQUIRE(!line);
    CHECK(line.error()[0].why == Why::BadFont);
    CHECK_MESSAGE(line.error()[0].sentence.find(odd.said) != std::string::npos,
                  line.error()[0].sentence);
  }
}

TEST_CASE("digits: every font of the tests has room below the limits, set 1 m high") {
  for (const std::string& file :
       {kDejaVu, kLiberation, kRoboto, kLato, kFreeSans, kNimbus, kCantarell, kInter}) {
    CAPTURE(file);
    const std::string bytes = file_bytes(file);
    const auto font = Font::open(bytes);
    REQUIRE(font);
    CHECK(set_digits(*font, "0123456789", 1000));
    // Twice as many edges, and those of a quarter of the tolerance: still below.
    CHECK(set_digits(*font, "0123456789", 4000));
  }
  for (const BundledFont& bundled : bundled_fonts())
    CHECK(set_digits(*open_bundled(bundled), "0123456789", 4000));
}

TEST_CASE("digits: what cannot be set is refused") {
  const auto anton = open_bundled(*bundled_font("Anton"));
  for (const char* const text : {"", "12a", "-1", "\xd9\xa1", "1 2"}) {
    const auto line = set_digits(*anton, text, 100);
    REQUIRE(!line);
    CHECK(line.error()[0].why == Why::OutOfRange);
  }
  CHECK(set_digits(*anton, "1", 0).error()[0].why == Why::OutOfRange);
  CHECK(set_digits(*anton, "1", std::nan("")).error()[0].why == Why::OutOfRange);

  const std::string bytes = letters_only();  // A to Z and a to z of OSP-DIN
  const auto letters = Font::open(bytes);
  REQUIRE(letters);
  CHECK(letters->has(U'A'));
  CHECK(!letters->has(U'4'));
  const auto line = set_digits(*letters, "404", 100);
  REQUIRE(!line);
  REQUIRE(line.error().size() == 2);
  CHECK(line.error()[0].why == Why::BadFont);
  CHECK(line.error()[1].sentence.find("no 4") != std::string::npos);
}
