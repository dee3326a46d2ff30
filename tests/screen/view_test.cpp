#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "swathe/screen.hpp"

// The observer's view and the round chart.
namespace swathe {
namespace {

std::vector<const FillMark*> areas_of(const ScreenPicture& picture, const std::string& what) {
  std::vector<const FillMark*> areas;
  for (const screen::Layer& layer : picture.layers) {
    if (layer.what != what) continue;
    for (const draw::Mark& mark : layer.drawing.marks())
      if (const auto* fill = std::get_if<FillMark>(&mark)) areas.push_back(fill);
  }
  return areas;
}

plane::Box seen_of(const ScreenPicture& picture) {
  plane::Box box;
  for (const screen::Layer& layer : picture.layers)
    for (const draw::Mark& mark : layer.drawing.marks())
      if (const auto* fill = std::get_if<FillMark>(&mark))
        for (const plane::Path& outline : fill->outlines) box.cover(bounds(outline));
  return box;
}

TEST_CASE("view: in the color asked for, digits in theirs") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  for (std::size_t color = 0; color < 2; ++color) {
    Observer from = first_observer(made, degrees(0));
    from.color = color;
    const ScreenPicture view = screen_view(made, labels, from);
    const auto cloth = areas_of(view, "cloth");
    REQUIRE_FALSE(cloth.empty());
    for (const FillMark* area : cloth)  // red, then blue, whatever the shade
      CHECK((color == 0 ? area->color.red > area->color.blue : area->color.blue > area->color.red));
    const auto digits = areas_of(view, "digit");
    CHECK(digits.size() == 5);
    for (const FillMark* digit : digits) {
      CHECK(digit->color == Color{1, 1, 1});
      CHECK(digit->shows == Subjects(Subject::numeral(1)));
    }
    CHECK(view.words.ends_with("from straight ahead: read from here, out to 74 ft."));
  }
}

TEST_CASE("view: digits stand where a pinhole shows them, worked out here") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  const Observer from = first_observer(made, degrees(0));
  const ScreenPicture view = screen_view(made, labels, from, {620, 360, 13, {}});
  const NumberInSpace& number = made.sight->scene.numbers[0];
  REQUIRE(number.side == "front");
  // From straight ahead the machine's right is on the picture's left. Hartley and Zisserman,
  // Multiple View Geometry, 6.1: x = f X / Z; all digits of a number are about as far away, so
  // their middles are spaced on the picture as they are on the bumper.
  const auto digits = areas_of(view, "digit");
  REQUIRE(digits.size() == number.digits.size());
  std::vector<double> drawn, true_x;
  for (std::size_t k = 0; k < digits.size(); ++k) {
    plane::Box box;
    for (const plane::Path& outline : digits[k]->outlines) box.cover(bounds(outline));
    drawn.push_back(box.middle().x);
    true_x.push_back(-number.digits[k].middle.x);
  }
  const double scale = (drawn.back() - drawn.front()) / (true_x.back() - true_x.front());
  CHECK(scale > 0);
  for (std::size_t k = 1; k < drawn.size(); ++k)
    CHECK((drawn[k] - drawn[0]) == doctest::Approx(scale * (true_x[k] - true_x[0])).epsilon(0.01));
  // And as high as wide: 4 in of digit to so many of the spacing, but for the slant from above.
  plane::Box first;
  for (const plane::Path& outline : digits[0]->outlines) first.cover(bounds(outline));
  CHECK(first.height() == doctest::Approx(scale * number.digits[0].seen_height).epsilon(0.06));
}

TEST_CASE("view: as large as it fits, or of one size all round") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  double least = 1e300, most = 0;
  for (int k = 0; k < 12; ++k) {
    const Observer from = first_observer(made, degrees(30.0 * k + 7));
    const plane::Box paper{{0, 0}, {620 * 25.4 / 96, 360 * 25.4 / 96}};
    const plane::Box large =
        seen_of(screen_view(made, labels, from, {620, 360, 13, {}}, ViewSize::Largest));
    CHECK(paper.holds(large));
    CHECK(std::min(paper.width() - large.width(), paper.height() - large.height()) < 4.2);
    const ScreenPicture turning =
        screen_view(made, labels, from, {620, 360, 13, {}}, ViewSize::AllRound);
    CHECK(paper.holds(seen_of(turning)));
    // The number's height tells the scale, but for how far off it is: a machine's half of 20 ft.
    for (const FillMark* digit : areas_of(turning, "digit")) {
      plane::Box box;
      for (const plane::Path& outline : digit->outlines) box.cover(bounds(outline));
      least = std::min(least, box.height());
      most = std::max(most, box.height());
    }
  }
  CHECK(most / least < 1.3);
}

/// By the shoelace formula, of arcs as short chords.
double area_of(const std::vector<const FillMark*>& areas) {
  double sum = 0;
  for (const FillMark* fill : areas)
    for (const plane::Path& outline : fill->outlines)
      sum += std::abs(plane::area(flatten(outline, 1e-4)));
  return sum;
}

TEST_CASE("chart: of each band's area as much can be read from as of the circle") {
  const Font labels = test::label_font();
  const std::string text = test::bytes_of(test::example("kinds/opening"));
  Made made = test::made(text + "\n[sight]\ndistance = [\"40 ft\"]\n");
  const SightRing* ring = nullptr;
  for (const SightRing& one : made.sight->rings)
    if (one.eye_height == inches(63)) ring = &one;
  REQUIRE(ring);
  REQUIRE(ring->fraction(Reads::Nothing) > 0.1);
  // So narrow that there are no samples beside their words.
  const ScreenPicture chart =
      screen_chart(made, labels, first_observer(made, degrees(0)), {360, 360, 13, {}});
  const double reads = area_of(areas_of(chart, "reads")),
               nothing = area_of(areas_of(chart, "nothing")),
               another = area_of(areas_of(chart, "another")), all = reads + nothing + another;
  CHECK(reads / all == doctest::Approx(ring->fraction(Reads::Number)).epsilon(0.001));
  CHECK(nothing / all == doctest::Approx(ring->fraction(Reads::Nothing)).epsilon(0.001));
}

TEST_CASE("chart: the eye stands on its bearing, at its band") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  for (const double deg : {0.0, 90.0, 200.0})
    for (const double feet : {20.0, 40.0, 60.0}) {
      Observer from = first_observer(made, degrees(deg));
      from.distance = inches(12 * feet);
      const ScreenPicture chart = screen_chart(made, labels, from, {620, 360, 13, {}});
      REQUIRE(chart.rings);
      const auto eyes = areas_of(chart, "eye");
      REQUIRE(eyes.size() == 1);
      const FlatPoint at = bounds(eyes[0]->outlines.front()).middle();
      const FlatPoint px{at.x * 96 / 25.4, chart.height_px - at.y * 96 / 25.4};
      const FlatPoint off = px - chart.rings->center_px;
      // Counter-clockwise from up; y down.
      const double pi = 3.14159265358979;
      const double radius = chart.rings->radius_px(from.distance);
      CHECK(off.x == doctest::Approx(-radius * std::sin(deg * pi / 180)).epsilon(1e-4));
      CHECK(off.y == doctest::Approx(-radius * std::cos(deg * pi / 180)).epsilon(1e-4));
    }
  const screen::Rings rings = *screen_chart(made, labels, first_observer(made, {})).rings;
  REQUIRE(rings.radii.size() == 5);  // three distances, and both edges
  for (std::size_t k = 1; k < rings.radii.size(); ++k) {
    CHECK(rings.radii[k].first > rings.radii[k - 1].first);
    CHECK(rings.radii[k].second > rings.radii[k - 1].second);
  }
  CHECK(rings.radii[1].second == inches(240));
  CHECK(rings.radius_px(inches(360)) ==
        doctest::Approx(0.5 * (rings.radii[1].first + rings.radii[2].first)));
  CHECK(rings.radius_px(mm(0)) == rings.radii.front().first);
  CHECK(rings.radius_px(kFarthestEye) == rings.radii.back().first);
}

TEST_CASE("chart: an eye height that no circle of the job has") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("kinds/opening")));
  Observer from = first_observer(made, degrees(0));
  from.eye_height = inches(12);
  const ScreenPicture low = screen_chart(made, labels, from);
  CHECK(low.words.find("eyes 12 in up") != std::string::npos);
  CHECK_FALSE(areas_of(low, "reads").empty());
}

}  // namespace
}  // namespace swathe
