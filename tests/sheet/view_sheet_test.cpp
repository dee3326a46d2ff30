#include "sheet/view_sheet.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sheet/view_picture.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

TEST_CASE("views: no text lies over another, over a line or off its page, on any paper") {
  const Font face = test::label_font();
  for (const auto& path : test::example_jobs())
    for (const char* paper : {"letter", "a4", "tabloid"}) {
      const Made job =
          test::made(test::bytes_of(path) + fmt::format("\n[paper]\nsheet = \"{}\"\n", paper));
      if (!job.sight) continue;
      INFO(path.filename().string());
      INFO(paper);
      const Sheet sheet = view_sheet(job, job.job.paper, face);
      CHECK(sheet.kind == SheetKind::Views);
      REQUIRE(sheet.pages.size() >= 2);
      for (const Page& page : sheet.pages) {
        for (const std::string& fault : test::text_faults(page, face)) CHECK_MESSAGE(false, fault);
        for (const std::string& fault : test::lines_through_text(page, face))
          CHECK_MESSAGE(false, fault);
        const plane::Box on = plane::Box{{0, 0}, {page.width_mm, page.height_mm}}.grown(1e-6);
        for (const draw::Mark& mark : page.drawing.marks())
          if (const auto* fill = std::get_if<FillMark>(&mark))
            for (const plane::Path& outline : fill->outlines) CHECK(on.holds(bounds(outline)));
      }
    }
}

/// Fills of one gray, and what they cover.
double area_of(const Drawing& drawing, double gray) {
  double sum = 0;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* fill = std::get_if<FillMark>(&mark))
      if (std::abs(fill->color.red - gray) < 1e-9)
        for (const plane::Path& outline : fill->outlines)
          sum += std::abs(area(flatten(outline, 0.001)));
  return sum;
}

TEST_CASE("views: covers in their own color, and digits stand out from it in gray too") {
  // Lightness in gray by Rec. ITU-R BT.601-7, 2.5.1.
  const auto lightness = [](const Color& c) {
    return 0.299 * c.red + 0.587 * c.green + 0.114 * c.blue;
  };
  struct Case {
    Color cloth, digits;
  };
  for (const Case& c : {Case{{0.71, 0.07, 0.11}, {1, 1, 1}}, {{1, 0.8, 0}, {0, 0, 0}}}) {
    Job job = test::demo_job();
    job.cloth.colors = {{"cloth", c.cloth}};
    job.numerals.color = c.digits;
    const Made made = test::made(job_text(job));
    const FlatPoint middle = made.sight->scene.center;
    Drawing drawing;
    draw_view(drawing, {{0, 0}, {100, 100}}, made, {middle.x - 6000, middle.y, 1200});
    const double wanted = std::abs(lightness(c.digits) - lightness(c.cloth));
    std::size_t colored = 0;
    for (const draw::Mark& mark : drawing.marks()) {
      const auto* fill = std::get_if<FillMark>(&mark);
      if (!fill || fill->color == c.digits) continue;
      const Color& own = fill->color;
      if (own.red == own.green && own.green == own.blue) continue;  // floor, boards
      ++colored;
      CHECK(own.red > own.blue + 0.2);  // its hue
      CHECK(std::abs(lightness(c.digits) - lightness(own)) >= wanted - 1e-9);
    }
    CHECK(colored > 5);
  }
}

// Of equal bands the outer ones are longer: a job with one circle has one band.
TEST_CASE("sight chart: what is dark is the share that reads nothing") {
  const Made job = test::made(R"([job]
title = "Chart"
number = "20486"
[frame]
width = "28 in"
depth = "30 in"
[[bumper]]
name = "A"
from = ["front", "50%"]
to = ["front", "45%"]
[numerals]
sides = ["left", "right"]
[sight]
distance = ["30 ft"]
eye_height = ["5 ft"]
)");
  const SightRing& ring = job.sight->rings.at(0);
  const double nothing = ring.fraction(Reads::Nothing);
  REQUIRE(nothing > 0.2);
  const Sheet sheet = view_sheet(job, job.job.paper, test::label_font());
  const Drawing& chart = sheet.pages.back().drawing;
  // The key's sample, 12 by 4.5 mm, is dark too. The band lies between two circles.
  double least = 1e300, most = 0;
  for (const draw::Mark& mark : chart.marks())
    if (const auto* line = std::get_if<LineMark>(&mark))
      if (line->path.closed && line->path.vertices.size() <= 4 &&
          line->path.vertices.front().bulge != 0) {
        least = std::min(least, 0.5 * bounds(line->path).width());
        most = std::max(most, 0.5 * bounds(line->path).width());
      }
  REQUIRE(most > least);
  const double band = std::numbers::pi * (most * most - least * least);
  CHECK((area_of(chart, 0.42) - 12 * 4.5) / band == doctest::Approx(nothing).epsilon(0.002));
}

// 4 in on two 2.5 in noodles is seen 3.9116 in high (2.5 + 2 x 1.25 sin 0.6), and the noodles 5 in:
// from far away and level, that is what the picture must measure.
TEST_CASE("views: the numeral is wrapped round the noodles") {
  const Made job = test::made(R"([job]
title = "One"
number = "1"
season = "none"
[frame]
width = "28 in"
depth = "30 in"
[boards]
thickness = "3/4 in"
[cloth]
thickness = "0 mm"
[[bumper]]
name = "A"
from = ["front", "50%"]
to = ["front", "45%"]
[numerals]
sides = ["left"]
height = "4 in"
)");
  Drawing drawing;
  const SpacePoint middle = job.sight->scene.numbers.at(0).digits.at(0).middle;
  draw_view(drawing, {{0, 0}, {100, 100}}, job, {middle.x - 1e8, middle.y, middle.z});
  plane::Box digit, cloth;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* fill = std::get_if<FillMark>(&mark))
      for (const plane::Path& outline : fill->outlines) {
        if (fill->color == Color{1, 1, 1}) digit.cover(bounds(outline));
        if (fill->color.red < 0.9) cloth.cover(bounds(outline));
      }
  REQUIRE(!digit.empty());
  CHECK(digit.height() / cloth.height() == doctest::Approx(3.9116 / 5).epsilon(1e-3));
  // Seen from outside, the machine's left side shows its front end on the observer's left; both
  // depths of padding stand out past the frame's 30 in and its fit of 1/16 in.
  CHECK(cloth.width() / cloth.height() == doctest::Approx((30 + 0.125 + 6.5) / 5).epsilon(1e-3));
}

}  // namespace
}  // namespace swathe
