#include <doctest/doctest.h>
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <limits>
#include <random>

#include "support/drawn.hpp"
#include "swathe/base.hpp"

using namespace swathe;

namespace {

double inch(std::string_view text) {
  const auto length = parse_length(text, Units::Inches);
  REQUIRE_MESSAGE(length.has_value(), text);
  return length->inches();
}

double milli(std::string_view text) {
  const auto length = parse_length(text, Units::Millimeters);
  REQUIRE_MESSAGE(length.has_value(), text);
  return length->mm();
}

}  // namespace

TEST_CASE("base: lengths are read as people write them") {
  for (const char* text :
       {"32 1/4 in", "32.25in", "2 ft 8 1/4 in", "2' 8-1/4\"", "2'8 1/4\"", "32-1/4 inches",
        "32.25", "  32   1/4  in ", "2ft8.25in", "129/4 in", "2\xe2\x80\xb2 8 1/4\xe2\x80\xb3"})
    CHECK_MESSAGE(inch(text) == doctest::Approx(32.25), text);
  // As telephones and word processors write them: signs for shares, curly marks, short words.
  for (const char* text :
       {"26½", "26 ½ in", "26-½ in", "26½″", "26½”", "26 1/2 in.", "26.5\"", "26.5”", "2’ 2½”",
        "2' 2 1/2''", "2 ft. 2 ½ in.", "2’2.5’’", "26½ inches"})
    CHECK_MESSAGE(inch(text) == doctest::Approx(26.5), text);
  CHECK(inch("⅞ in") == 0.875);
  CHECK(inch("1 ⅛ in") == 1.125);
  CHECK(inch("-¼") == -0.25);
  CHECK(inch("3⅔ ft") == doctest::Approx(44));
  CHECK(inch("2 ft.5 in") == 24.5);  // a point in front of a digit belongs to it
  CHECK(inch("-1/4 in") == doctest::Approx(-0.25));
  CHECK(inch("-2 ft 6 in") == doctest::Approx(-30));
  CHECK(inch(".5 in") == doctest::Approx(0.5));
  CHECK(inch("0 in") == 0);
  CHECK_FALSE(std::signbit(inch("-0 in")));
  CHECK(milli("819") == 819);
  CHECK(milli("81.9 cm") == doctest::Approx(819));
  CHECK(milli("1 m") == 1000);
  CHECK(milli("1 m 20 cm") == 1200);
}

// The international yard is 0.9144 m exactly, its inch 25.4 mm: NIST Handbook 44 (2023), Appendix
// C, "International foot and yard" (from memory).
TEST_CASE("base: inch, foot and yard are the international ones") {
  CHECK(milli("1 yd") == doctest::Approx(914.4).epsilon(1e-14));
  CHECK(milli("1 ft") == doctest::Approx(304.8).epsilon(1e-14));
  CHECK(milli("1 in") == 25.4);
  CHECK(milli("1/4 yd") == doctest::Approx(228.6).epsilon(1e-14));
}

// Printed beside each other in the APA table "Performance category" for US PS 1, plywood.
TEST_CASE("base: plywood sizes, inches and the millimeters printed beside them") {
  struct Size {
    const char *inches, *mm;
  };
  for (const Size& size :
       {Size{"0.438 in", "11.11 mm"}, Size{"0.500 in", "12.70 mm"}, Size{"0.469 in", "11.91 mm"},
        Size{"0.531 in", "13.49 mm"}, Size{"0.688 in", "17.46 mm"}, Size{"0.750 in", "19.05 mm"},
        Size{"0.719 in", "18.26 mm"}, Size{"0.781 in", "19.84 mm"}})
    // Each column is rounded: half of 1/1000 in and of 1/100 mm.
    CHECK_MESSAGE(std::abs(milli(size.inches) - milli(size.mm)) <= 0.0127 + 0.005, size.inches);
  // The category 3/4 is 1/32 under to 1/32 over its size (the same table).
  CHECK(plain_number(inch("23/32 in"), 3) == "0.719");
  CHECK(plain_number(inch("25/32 in"), 3) == "0.781");
}

TEST_CASE("base: what is no length is refused") {
  for (const char* text : {"",          " ",         "in",        "32 1/4 furlongs", "32 1/0 in",
                           "1/0",       "--1 in",    "+1 in",     "1,5 in",          "nan",
                           "inf",       "nan in",    "inf mm",    "1e3 in",          "1 in 2",
                           "1 in 2 in", "1 in 2 ft", "1 m 3 in",  "1.5 1/4",         "1 1 1/4",
                           "1//4",      "1/ 4 in",   "8 -1/4 in", "2 ft -3 in",      "1..2 in",
                           "0x10 in",   "1 in in",   "1/4/2 in",  "2.5 ft 1 in",     "- in",
                           "1 IN",      "1\n in",    "\xff",      "½½ in",           "1.5½ in",
                           "1/½ in",    "½/2 in",    "1 mm.",     "1 inch.",         "26 in..",
                           "26'''",     "26½ ½",     "½ 1/2 in"})
    CHECK_MESSAGE(!parse_length(text, Units::Inches), text);
  CHECK(!parse_length(std::string(400, '9') + " mm", Units::Inches));
  CHECK(!parse_length(std::string(308, '9') + " m", Units::Inches));
  CHECK(!parse_length(std::string_view("1 in\0", 5), Units::Inches));
}

TEST_CASE("base: angles") {
  CHECK(parse_angle("90 deg")->degrees() == doctest::Approx(90));
  CHECK(parse_angle("90")->degrees() == doctest::Approx(90));
  CHECK(parse_angle("22 1/2 deg")->degrees() == doctest::Approx(22.5));
  CHECK(parse_angle("15 arcmin")->degrees() == doctest::Approx(0.25));
  CHECK(parse_angle("0.5 rad")->radians() == 0.5);
  CHECK(parse_angle("-3.5\xc2\xb0")->degrees() == doctest::Approx(-3.5));
  // 3437.747 minutes to a radian: FAA Human Factors Design Standard, the visual angle formula.
  CHECK(parse_angle("1 rad")->arcmin() == doctest::Approx(3437.747).epsilon(1e-6));
  for (const char* text : {"", "deg", "9 turns", "1 deg 2", "1 deg deg", "nan deg", "1e2"})
    CHECK_MESSAGE(!parse_angle(text), text);
}

TEST_CASE("base: numbers") {
  CHECK(parse_number("1.5") == 1.5);
  CHECK(parse_number("-2e3") == -2000.0);
  for (const char* text : {"", " 1", "1 ", "1,5", "nan", "inf", "-infinity", "1e999", "0x1", "+1"})
    CHECK_MESSAGE(!parse_number(text), text);
  CHECK(plain_number(1.25, 3) == "1.25");
  CHECK(plain_number(100, 2) == "100");
  CHECK(plain_number(100, 0) == "100");
  CHECK(plain_number(-0.0004, 3) == "0");
  CHECK(plain_number(-0.0, 0) == "0");
  CHECK(plain_number(-0.5004, 3) == "-0.5");
  CHECK(plain_number(1234567.891, 2) == "1234567.89");
}

TEST_CASE("base: plain numbers are rounded as the C library rounds them") {
  // Source: ISO C 7.21.6.1, conversion f: the number in figures, correctly rounded.
  const auto by_c = [](double value, int decimals) {
    std::array<char, 400> buffer{};
    std::string text(buffer.data(), static_cast<std::size_t>(std::snprintf(
                                        buffer.data(), buffer.size(), "%.*f", decimals, value)));
    if (text.find('.') != std::string::npos) text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text == "-0" ? "0" : text;
  };
  test::for_drawn_cases("plain-number", 20000, [&](std::mt19937_64& rng) {
    const int decimals = static_cast<int>(rng() % 11);
    const double size = std::pow(10.0, test::drawn(rng, -12, 18));
    const double step = std::pow(10.0, -decimals);
    const double half = (std::round(test::drawn(rng, -1e5, 1e5)) + 0.5) * step;
    for (const double value : {test::drawn(rng, -size, size), half, std::nextafter(half, 1e9),
                               std::nextafter(half, -1e9), half + 0.001 * step, 2 * half})
      CHECK(plain_number(value, decimals) == by_c(value, decimals));
  });
}

TEST_CASE("base: dimensions are reduced fractions") {
  CHECK(dimension(inches(32.25), Units::Inches) == "32 1/4");
  CHECK(dimension(inches(0), Units::Inches) == "0");
  CHECK(dimension(inches(1.0 / 16), Units::Inches) == "1/16");
  CHECK(dimension(inches(0.5), Units::Inches) == "1/2");
  CHECK(dimension(inches(-0.625), Units::Inches) == "-5/8");
  CHECK(dimension(inches(-1.625), Units::Inches) == "-1 5/8");
  CHECK(dimension(inches(-0.01), Units::Inches) == "0");
  CHECK(dimension(inches(1.99), Units::Inches) == "2");
  for (int k = 0; k < 200; ++k)  // halfway goes up, whatever the last digit of the product says
    CHECK(dimension(inches((2 * k + 1) / 32.0), Units::Inches) ==
          dimension(inches((2 * k + 2) / 32.0), Units::Inches));
  CHECK(dimension(mm(818.6), Units::Millimeters) == "819");
  CHECK(dimension(mm(-0.2), Units::Millimeters) == "0");
  CHECK(dimension_with_unit(inches(32.25), Units::Inches) == "32 1/4 in");
  CHECK(dimension_with_unit(mm(819), Units::Millimeters) == "819 mm");
  CHECK(yards(mm(914.4)) == "1 yd");  // international yard and pound agreement, 1959
  CHECK(yards(inches(90)) == "2 1/2 yd");
  CHECK(dimension(mm(1e300), Units::Inches).size() > 100);
}

TEST_CASE("base: measured and exact values carry their unit") {
  CHECK(measured(inches(4.125), Units::Inches) == "4.125 in");
  CHECK(measured(mm(104.775), Units::Millimeters) == "104.8 mm");
  CHECK(exact(inches(3.75), Units::Inches) == "3 3/4 in");
  CHECK(exact(inches(23.0 / 32), Units::Inches) == "23/32 in");
  CHECK(exact(inches(-1.0 / 64), Units::Inches) == "-1/64 in");
  CHECK(exact(mm(100), Units::Inches) == "3.937 in");
  CHECK(exact(inches(3.75), Units::Millimeters) == "95.25 mm");
  CHECK(exact(mm(18), Units::Millimeters) == "18 mm");
}

TEST_CASE("base: a printed dimension, read again, is within half its step") {
  std::mt19937_64 rng(20260105);
  std::uniform_real_distribution<double> size(-3000, 3000);
  for (int k = 0; k < 2000; ++k) {
    const Length drawn = mm(size(rng));
    const auto inch_again = parse_length(dimension_with_unit(drawn, Units::Inches), Units::Inches);
    REQUIRE(inch_again);
    CHECK(std::abs((*inch_again - drawn).inches()) <= 1.0 / 32 + 1e-9);
    const auto mm_again = parse_length(dimension(drawn, Units::Millimeters), Units::Millimeters);
    REQUIRE(mm_again);
    CHECK(std::abs((*mm_again - drawn).mm()) <= 0.5);
  }
}
