#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "base/embedded.hpp"
#include "support/raster.hpp"
#include "swathe/type.hpp"

using namespace swathe;

namespace {

constexpr double kFourInches = 101.6, kInch = 25.4;

/// A bundled font as it was measured apart from this program, by a raster of 400 pixels an inch:
/// Euclidean distance transform, its ridge cut where the nearest edges are not opposite; digits 4
/// in high. Inches; the raster was good to 0.003 in on bars and rings.
struct Measured {
  const char* name;
  std::map<std::string, double> axes;
  double five_average;
  double share, least;
  char thinnest, twin;  // a 9 is mostly a 6 turned over
};

const std::vector<Measured>& measured_fonts() {
  static const std::vector<Measured> fonts = {
      {"Anton", {}, 10.93, 1.000, 0.50, '6', '9'},
      {"Saira", {{"wdth", 50}, {"wght", 750}}, 9.19, 0.983, 0.35, '6', '9'},
      {"Saira", {}, 10.51, 1.000, 0.52, '6', '9'},
      {"OSP-DIN", {}, 9.95, 0.993, 0.40, '1', '1'},
      {"Bebas Neue", {}, 10.90, 0.988, 0.30, '6', '9'},
      {"Sofia Sans Extra Condensed", {}, 12.68, 1.000, 0.56, '6', '9'},
      {"Staatliches", {}, 11.94, 1.000, 0.59, '4', '4'},
      {"Big Shoulders Stencil", {}, 11.67, 0.983, 0.27, '4', '4'},
      {"Saira Stencil One", {}, 17.36, 1.000, 0.71, '8', '8'}};
  return fonts;
}

}  // namespace

TEST_CASE("figures: strokes of the bundled fonts are as a raster measured them") {
  for (const Measured& want : measured_fonts()) {
    const auto font = open_bundled(*bundled_font(want.name), want.axes);
    REQUIRE(font);
    // The raster took what was within its error of 0.5 in for 0.5 in: 0.4975 in.
    const auto figures = measure_font(*font, kFourInches, 0.4975 * kInch);
    REQUIRE(figures);
    CAPTURE(want.name);
    CHECK(std::abs(figures->share_at_least() - want.share) < 0.002);
    CHECK(std::abs(figures->thinnest().stroke_least / kInch - want.least) < 0.005 + 0.003);
    const char thinnest = figures->thinnest().digit;
    CHECK((thinnest == want.thinnest || thinnest == want.twin));
    CHECK(figures->five_average / kInch == doctest::Approx(want.five_average).epsilon(0.01));
  }
}

TEST_CASE("figures: strokes agree with the stems the designer stated") {
  // Source: the private dictionary of BebasNeue-Bold.otf 3.0: StdVW 110, StdHW 100 of an em of
  // 1000; digits 700 high (fontTools 4.38). The most of a 0 is upright stems.
  const auto font = open_bundled(*bundled_font("Bebas Neue"));
  const auto figures = measure_font(*font, 700, 1);
  REQUIRE(figures);
  CHECK(figures->digits[0].stroke_median == doctest::Approx(110).epsilon(0.005));
  CHECK(figures->digits[0].stroke_least == doctest::Approx(100).epsilon(0.005));
}

TEST_CASE("figures: a raster of every bundled digit gives the same width at every point measured") {
  const double pixel = kInch / 150, flat = 2 * kDigitFlatness;
  double sum = 0, length = 0;
  for (const BundledFont& entry : bundled_fonts()) {
    const auto font = open_bundled(entry);
    const auto line = set_digits(*font, "0123456789", kFourInches);
    REQUIRE(line);
    for (const DigitOutline& shape : line->shapes) {
      CAPTURE(entry.name);
      CAPTURE(shape.digit);
      const unsigned glyph = font->shape(std::string(1, shape.digit))[0].glyph;
      const test::Raster raster(font->outline(glyph), line->em, shape.ink, pixel);
      double least = 1e9, most = -1e9;
      const type::Stroke stroke = measure_stroke(shape.outline);
      for (const StrokePiece& piece : stroke.pieces()) {
        const double off = raster.to_blank(piece.at) - piece.width / 2;
        least = std::min(least, off);
        most = std::max(most, off);
        sum += off * piece.length;
        length += piece.length;
      }
      // No blank pixel lies in the circle. Beyond its rim, a blank circle of 0.71 of a pixel holds
      // the middle of one, and no point of that is further off than twice as much.
      CHECK(least > -flat);
      CHECK(most < std::sqrt(2.0) * pixel + flat);
    }
  }
  // Of two blank pixels either side of an upright stroke, the nearer is on the whole a third of a
  // pixel past the rim; with more of them to choose from it is nearer.
  CHECK(sum / length > 0);
  CHECK(sum / length < 0.34 * pixel);
}

TEST_CASE("figures: which digits look alike") {
  // Judged by eye, from sheets of the digits: in Anton the 6 and the 8, the 0 and the 8 come close,
  // in OSP-DIN the 6 and the 8; nowhere the 1 and the 7.
  const auto alike = [](const char* name) {
    return measure_font(*open_bundled(*bundled_font(name)), kFourInches, 1)->alike;
  };
  const auto anton = alike("Anton");
  REQUIRE(anton.size() == 5);
  CHECK(anton[0].right == '8');
  CHECK(anton[1].right == '8');
  CHECK(anton[1].value > 0.85);
  CHECK(anton.back().left == '1');
  CHECK(alike("OSP-DIN")[0].left == '6');
}

TEST_CASE("figures: the closest neighbors") {
  const auto font = open_bundled(*bundled_font("OSP-DIN"));
  const auto figures = measure_font(*font, kFourInches, 1);
  REQUIRE(figures);
  CHECK(figures->closest.value > 0);
  // Set side by side, no two boxes can be further apart than the ink of the closest pair allows.
  const std::string pair{figures->closest.left, figures->closest.right};
  const auto line = set_digits(*font, pair, figures->digits[4].height);
  REQUIRE(line);
  const plane::Box &left = line->shape(pair[0]).ink, &right = line->shape(pair[1]).ink;
  const double between_boxes = line->places[1].origin.x + right.lo.x - left.hi.x;
  CHECK(figures->closest.value >= between_boxes - 0.01);
}

TEST_CASE("figures: the verdict in words") {
  const auto words = [](const char* name, double asked) {
    return verdict(*measure_font(*open_bundled(*bundled_font(name)), kFourInches, asked));
  };
  CHECK(words("Staatliches", 12.7) == "wide enough throughout");
  CHECK(words("OSP-DIN", 12.7) == "wide enough for the most part; thinner in places: 1");
  CHECK(words("OSP-DIN", 25.4) == "too thin for the most part: 0, 1, 2, 3, 4, 5, 6, 7, 8, 9");
}

TEST_CASE("figures: a font that cannot be measured is refused") {
  const auto font = open_bundled(*bundled_font("Anton"));
  CHECK(measure_font(*font, -1, 1).error()[0].why == Why::OutOfRange);
}
