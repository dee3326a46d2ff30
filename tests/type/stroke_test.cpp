#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "plane/clip.hpp"
#include "plane/medial.hpp"
#include "swathe/type.hpp"
#include "type/debian_fonts.hpp"

// Shapes whose stroke is known because they were drawn with it. Millimeters; within 0.1 % of the
// stroke unless said otherwise.
using namespace swathe;
using namespace swathe::test;
using std::numbers::pi;

namespace {

constexpr double kWithin = 0.001;

plane::Polygon bar(FlatPoint lo, FlatPoint hi) { return {lo, {hi.x, lo.y}, hi, {lo.x, hi.y}}; }

plane::Polygon turned(plane::Polygon polygon, double angle) {
  for (FlatPoint& p : polygon)
    p = p.x * plane::direction(angle) + p.y * plane::left_of(plane::direction(angle));
  return polygon;
}

/// The points of an arc, counter-clockwise, chords within 0.002 mm of it.
plane::Polygon arc(FlatPoint center, double radius, double from, double to) {
  const int n = static_cast<int>(std::ceil(std::abs(to - from) / std::sqrt(8 * 0.002 / radius)));
  plane::Polygon points;
  for (int i = 0; i <= n; ++i) {
    points.push_back(center + radius * plane::direction(from + (to - from) * i / n));
  }
  return points;
}

plane::Polygon reversed(plane::Polygon polygon) { return {polygon.rbegin(), polygon.rend()}; }

/// A bar of stroke w along an arc of middle radius r.
plane::Polygon bent_bar(double r, double w, double from, double to) {
  plane::Polygon points = arc({}, r + w / 2, from, to);
  const plane::Polygon back = arc({}, r - w / 2, to, from);
  points.insert(points.end(), back.begin(), back.end());
  return points;
}

/// A character's outline in font units.
plane::Region in_units(const Font& font, const char* text, int em) {
  plane::Region region = *font.region(font.shape(text)[0].glyph, 0.05 / em);
  for (plane::Polygon& polygon : region) {
    for (FlatPoint& p : polygon) p = static_cast<double>(em) * p;
  }
  return region;
}

void check_even(const type::Stroke& stroke, double width) {
  CHECK(stroke.length() > 0);
  CHECK(stroke.median() == doctest::Approx(width).epsilon(kWithin));
  CHECK(stroke.least() == doctest::Approx(width).epsilon(kWithin));
  CHECK(stroke.share_at_least(width * (1 - kWithin)) == doctest::Approx(1));
  CHECK(stroke.share_at_least(width * (1 + kWithin)) == doctest::Approx(0));
}

}  // namespace

TEST_CASE("Stroke (1): bars, upright, lying and tilted") {
  for (const double angle : {0.0, 0.1, pi / 4, pi / 2, 2.0}) {
    CAPTURE(angle);
    const type::Stroke stroke = measure_stroke({turned(bar({0, 0}, {100, 12.7}), angle)});
    check_even(stroke, 12.7);
    // The line ends where the circle meets the bar's end: half a stroke from either.
    CHECK(stroke.length() == doctest::Approx(100 - 12.7).epsilon(0.01));
  }
}

TEST_CASE("Stroke (1): rings and arcs") {
  const plane::Region ring = {arc({}, 50, 0, 2 * pi), reversed(arc({}, 36, 0, 2 * pi))};
  const type::Stroke round = measure_stroke(ring);
  check_even(round, 14);
  CHECK(round.length() == doctest::Approx(2 * pi * 43).epsilon(0.001));
  check_even(measure_stroke({bent_bar(40, 10, 0.3, 2.4)}), 10);
  // A bowl so tight that its counter is narrower than its stroke.
  check_even(measure_stroke({arc({}, 20, 0, 2 * pi), reversed(arc({}, 5, 0, 2 * pi))}), 15);
}

TEST_CASE("Stroke (1): round ends") {
  plane::Polygon points = arc({80, 0}, 6, -pi / 2, pi / 2);
  const plane::Polygon left = arc({0, 0}, 6, pi / 2, 3 * pi / 2);
  points.insert(points.end(), left.begin(), left.end());
  const type::Stroke stroke = measure_stroke({points});
  check_even(stroke, 12);
  CHECK(stroke.length() == doctest::Approx(80).epsilon(0.01));
}

TEST_CASE("Stroke (2): a mitred L keeps its stroke, and its corner does not count") {
  const type::Stroke stroke =
      measure_stroke({{{0, 0}, {80, 0}, {80, 12}, {12, 12}, {12, 90}, {0, 90}}});
  CHECK(stroke.median() == doctest::Approx(12).epsilon(kWithin));
  CHECK(stroke.least() == doctest::Approx(12).epsilon(kWithin));
  // The circle in the corner touches both outer edges and the inner corner: r = sqrt(2) (w - r).
  const double in_corner = 2 * 12 * std::sqrt(2.0) / (1 + std::sqrt(2.0));
  CHECK(stroke.share_at_least(0.95 * in_corner) == 0);
}

TEST_CASE("Stroke (2): the circle in a T does not count") {
  const plane::Region tee = plane::unite({bar({0, 80}, {60, 92}), bar({24, 0}, {36, 86})});
  const type::Stroke stroke = measure_stroke(tee);
  CHECK(stroke.median() == doctest::Approx(12).epsilon(kWithin));
  CHECK(stroke.least() == doctest::Approx(12).epsilon(kWithin));
  // It touches the top and both inner corners: r = (h^2 + w^2 / 4) / (2 h) with h = w: 1.25 w wide.
  CHECK(stroke.share_at_least(0.9 * 1.25 * 12) == 0);
}

TEST_CASE("Stroke: widths count by the length on which they stand") {
  // 0.6 in on seven tenths of the line and 0.4 in on the rest, one after the other.
  const double wide = 15.24, narrow = 10.16;
  const type::Stroke stroke = measure_stroke({{{0, 0},
                                               {300, 0},
                                               {300, narrow},
                                               {210, narrow},  //
                                               {210, wide},
                                               {0, wide}}});
  CHECK(stroke.median() == doctest::Approx(wide).epsilon(kWithin));
  CHECK(stroke.least() == doctest::Approx(narrow).epsilon(kWithin));
  // By hand: the wide line runs from half its stroke to where its circle meets the inner corner
  // (210 - sqrt(7.62^2 - 2.54^2)), the narrow one from half its stroke before the end to 2.38 past
  // the corner, where the end's limit stops it: 195.196 / (195.196 + 84.92 + 2.38).
  CHECK(stroke.share_at_least(12.7) == doctest::Approx(0.6910).epsilon(0.002));
  CHECK(stroke.least_at().x > 200);
  const type::Stroke other =
      measure_stroke({bar({0, 0}, {300 * 0.3, wide}), bar({0, 40}, {210, 40 + narrow})});
  CHECK(other.median() == doctest::Approx(narrow).epsilon(kWithin));
}

TEST_CASE("Stroke (3): turned, mirrored, moved: the same") {
  const plane::Region tee = plane::unite({bar({0, 80}, {60, 92}), bar({24, 0}, {36, 86})});
  const type::Stroke plain = measure_stroke(tee);
  plane::Region moved = tee;
  for (plane::Polygon& polygon : moved) {
    for (FlatPoint& p : polygon) p = FlatPoint{-p.x, p.y};
    polygon = reversed(turned(polygon, 0.7));
    for (FlatPoint& p : polygon) p = p + FlatPoint{311, -95};
  }
  const type::Stroke other = measure_stroke(moved);
  CHECK(other.length() == doctest::Approx(plain.length()).epsilon(kWithin));
  CHECK(other.median() == doctest::Approx(plain.median()).epsilon(kWithin));
  CHECK(other.least() == doctest::Approx(plain.least()).epsilon(kWithin));
}

// Which of two places is told as the narrowest must not hang on the last digit of either.
TEST_CASE("Stroke: pieces as wide but for rounding keep their order, narrower ones come first") {
  const type::Stroke stroke(
      {{{0, 0}, 1, 20 + 4e-15}, {{1, 0}, 1, 20}, {{2, 0}, 1, 19}, {{3, 0}, 1, 19}});
  REQUIRE(stroke.pieces().size() == 4);
  CHECK(stroke.least_at() == FlatPoint{2, 0});
  CHECK(stroke.pieces()[1].at == FlatPoint{3, 0});
  CHECK(stroke.pieces()[2].at == FlatPoint{0, 0});
  CHECK(stroke.pieces()[3].at == FlatPoint{1, 0});
}

TEST_CASE("Stroke: nothing has no stroke") {
  const type::Stroke none = measure_stroke({});
  CHECK(none.length() == 0);
  CHECK(none.median() == 0);
  CHECK(none.share_at_least(0) == 0);
}

TEST_CASE("Stroke: upright stems of the Debian fonts") {
  // Source: fontTools 4.38 on the package versions named in debian_fonts.hpp: widths of the stems
  // of the 1 and the I, font units.
  struct Want {
    std::string path;
    int em;
    double one, capital_i;
  };
  const std::vector<Want> wanted = {{kDejaVu, 2048, 364, 385},    {kLiberation, 2048, 281, 295},
                                    {kRoboto, 2048, 289, 300},    {kLato, 2000, 247, 270},
                                    {kFreeSans, 1000, 140, 150},  {kNimbus, 1000, 140, 150},
                                    {kCantarell, 1000, 128, 131}, {kInter, 2816, 433, 433}};
  for (const Want& want : wanted) {
    CAPTURE(want.path);
    const std::string bytes = file_bytes(want.path);
    const auto font = Font::open(bytes);
    REQUIRE(font);
    const auto stem = [&](const char* text) {
      const plane::Region region = in_units(*font, text, want.em);
      plane::Box box;
      for (const FlatPoint p : region[0]) box.cover(p);
      const type::Stroke stroke = measure_stroke(region);
      std::vector<StrokePiece> middle;
      for (const StrokePiece& piece : stroke.pieces()) {
        const double up = (piece.at.y - box.lo.y) / box.height();
        if (up > 0.3 && up < 0.6) middle.push_back(piece);
      }
      return type::Stroke(middle);
    };
    const type::Stroke one = stem("1"), capital_i = stem("I");
    CHECK(one.length() > 0.25 * 0.7 * want.em);
    CHECK(std::abs(one.median() - want.one) < 0.5);
    CHECK(std::abs(capital_i.median() - want.capital_i) < 0.5);
    CHECK(std::abs(capital_i.least() - want.capital_i) < 0.5);
  }
}

TEST_CASE("Stroke (2): the greatest circle in a digit is no stroke") {
  // Source: greatest inscribed circles of DejaVu Sans Bold 2.37, font units, by shapely on outlines
  // from fontTools 4.38. In the 1 it sits where the flag joins the stem of 364.
  const std::string bytes = file_bytes(kDejaVu);
  const auto font = Font::open(bytes);
  REQUIRE(font);
  const auto widest = [&](const char* digit) {
    double most = 0;
    for (const plane::MedialEdge& edge : medial_axis(in_units(*font, digit, 2048), 1).edges) {
      for (const plane::MedialPoint& p : edge.points) most = std::max(most, 2 * p.radius);
    }
    return most;
  };
  CHECK(std::abs(widest("0") - 385.0) < 0.5);
  CHECK(std::abs(widest("1") - 390.5) < 0.5);
  CHECK(std::abs(widest("8") - 369.0) < 0.5);
  const type::Stroke one = measure_stroke(in_units(*font, "1", 2048));
  CHECK(one.share_at_least(390) == 0);
}
