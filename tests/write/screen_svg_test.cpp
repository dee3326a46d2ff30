#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "support/comma_locale.hpp"
#include "support/commands.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/picture.hpp"
#include "support/screen_pictures.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

constexpr double kMmPerPx = 25.4 / 96;

FlatPoint px(double x, double y, double height_px = 160) {
  return {kMmPerPx * x, kMmPerPx * (height_px - y)};
}

/// 200 by 160 pixels with an area of known corners.
ScreenPicture some_picture() {
  ScreenPicture picture;
  picture.kind = "plan";
  picture.title = "From above";
  picture.words = "What it shows.";
  picture.width_px = 200;
  picture.height_px = 160;
  picture.text_px = 13;
  screen::Layer wood{"wood", 1, 1, false, {}};
  {
    const Showing board(wood.drawing, Subject::board("A", "front"));
    wood.drawing.fill(
        LineKind::Outline, {},
        {plane::closed_path({px(20.5, 30.5), px(120.5, 30.5), px(120.5, 90.5), px(20.5, 90.5)})});
    wood.drawing.line(LineKind::Fold, px(10, 140), px(190, 140));
    wood.drawing.line(LineKind::Fold, px(10, 150), px(190, 150));
  }
  picture.layers.push_back(wood);
  return picture;
}

test::Picture raster_of(const std::string& svg, int zoom) {
  const test::TemporaryFolder folder;
  test::run("rsvg-convert -b white -z " + std::to_string(zoom) + " -f pdf -o " +
            folder.file("a.pdf") + " " + folder.write("a.svg", svg));
  return test::raster(folder.read("a.pdf"), 1, 72 * 4);
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t found = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
    ++found;
  return found;
}

TEST_CASE("screen svg (1): same picture, same bytes, also where numbers have a decimal comma") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  std::vector<std::string> before;
  for (const auto& one : test::screen_pictures(made, labels, {}))
    before.push_back(to_svg(one.picture, labels));
  const test::CommaLocale comma;
  const Made again = test::made(test::bytes_of(test::example("tin-heron")));
  std::size_t k = 0;
  for (const auto& one : test::screen_pictures(again, labels, {})) {
    CAPTURE(one.name);
    CHECK(to_svg(one.picture, labels) == before[k++]);
  }
  CHECK(k == before.size());
}

TEST_CASE("screen svg (2): well-formed whatever the words, and nothing in it acts") {
  const Font labels = test::label_font();
  const std::string odd = "a & b < c > \"d\" 'e' \x01\x1f\t</svg><script>\xc2\xbd";
  ScreenPicture picture = some_picture();
  picture.title = picture.words = picture.kind = picture.layers[0].what = odd;
  screen::Layer words{"words", 1, 1, false, {}};
  words.drawing.text(
      {px(100, 60), odd, 2, draw::Anchor::Middle, 0.5, Subjects(Subject::bumper(odd))});
  picture.layers.push_back(words);
  screen::Handle handle;
  handle.side = handle.corner = odd;
  handle.keys = {odd};
  handle.shows = Subject::end(odd, true);
  picture.handles.push_back(handle);
  const std::string svg = to_svg(picture, labels);
  const test::TemporaryFolder folder;
  // Refuses broken XML, and tells what a reader of it gets.
  const std::string read = test::run(
      "python3 -c 'import sys, xml.etree.ElementTree as e; "
      "t = e.parse(sys.argv[1]).getroot(); "
      "print(sorted({x.tag.split(\"}\")[1] for x in t.iter()})); print(t[1].text)' " +
      folder.write("a.svg", svg));
  CHECK(read ==
        "['circle', 'desc', 'g', 'path', 'svg', 'text', 'title']\n"
        "a & b < c > \"d\" 'e' </svg><script>\xc2\xbd\n");
}

TEST_CASE("screen svg (2): of a real job: no style, id, script or address in it") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  for (const auto& one : test::screen_pictures(made, labels, {})) {
    CAPTURE(one.name);
    const std::string svg = to_svg(one.picture, labels);
    for (const char* never :
         {" style=", " id=", "<script", "<style", "href", "url(", " onclick", " onload"})
      CHECK_MESSAGE(count(svg.substr(svg.find("</desc>")), never) == 0, never);
    CHECK(count(svg, "http") == 1);  // the namespace
    CHECK(count(svg, "<title>") == 1);
    CHECK(svg.find("<desc>" + one.picture.words + "</desc>") != std::string::npos);
    // Colors by class: only a view's own are told, as attributes.
    if (!one.picture.kind.starts_with("view")) CHECK(count(svg, "=\"#") == 0);
  }
}

TEST_CASE("screen svg (3): areas lie where the picture has them, drawn by librsvg") {
  // Corners on halves of pixels: 20.5 to 120.5 across, 30.5 to 90.5 down.
  const test::Picture picture = raster_of(to_svg(some_picture(), test::label_font()), 1);
  const double dots = picture.width / 200.0;
  plane::Box dark;
  for (int y = 0; y < static_cast<int>(120 * dots); ++y)
    for (int x = 0; x < picture.width; ++x)
      if (picture.is_dark(x, y)) {
        dark.cover(FlatPoint{x / dots, y / dots});
        dark.cover(FlatPoint{(x + 1) / dots, (y + 1) / dots});
      }
  CHECK(std::abs(dark.lo.x - 20.5) <= 0.1 + 0.5 / dots);
  CHECK(std::abs(dark.hi.x - 120.5) <= 0.1 + 0.5 / dots);
  CHECK(std::abs(dark.lo.y - 30.5) <= 0.1 + 0.5 / dots);
  CHECK(std::abs(dark.hi.y - 90.5) <= 0.1 + 0.5 / dots);
}

TEST_CASE("screen svg (3): arcs bend as they should, drawn by librsvg") {
  ScreenPicture picture = some_picture();
  picture.layers.clear();
  screen::Layer layer{"padding", 1, 1, false, {}};
  layer.drawing.fill(LineKind::Outline, {}, {plane::circle(px(60, 80), 40 * kMmPerPx)});
  // A quarter of a pie: its arc bulges out to the right and up.
  layer.drawing.fill(
      LineKind::Outline, {},
      {plane::Path{{{px(120, 120), 0}, {px(180, 120), 0.41421356}, {px(120, 60), 0}}, true}});
  picture.layers.push_back(layer);
  const test::Picture raster = raster_of(to_svg(picture, test::label_font()), 1);
  const double dots = raster.width / 200.0;
  double disc = 0, pie = 0;
  for (int y = 0; y < raster.height; ++y)
    for (int x = 0; x < raster.width; ++x)
      if (raster.is_dark(x, y)) (x < 110 * dots ? disc : pie) += 1 / (dots * dots);
  const double pi = 3.14159265358979;
  CHECK(disc == doctest::Approx(pi * 40 * 40).epsilon(0.005));
  CHECK(pie == doctest::Approx(pi * 60 * 60 / 4).epsilon(0.005));
}

TEST_CASE("screen svg (3): small circles are round, wherever their centers lie") {
  for (const double x : {60.0, 60.03, 60.07}) {
    ScreenPicture picture = some_picture();
    picture.layers.clear();
    screen::Layer layer{"eye", 1, 1, false, {}};
    layer.drawing.fill(LineKind::Outline, {}, {plane::circle(px(x, 80.04), 5.67 * kMmPerPx)});
    picture.layers.push_back(layer);
    const test::Picture raster = raster_of(to_svg(picture, test::label_font()), 1);
    const double dots = raster.width / 200.0;
    plane::Box dark;
    for (int v = 0; v < raster.height; ++v)
      for (int u = 0; u < raster.width; ++u)
        if (raster.is_dark(u, v)) dark.cover(FlatPoint{u / dots, v / dots});
    CHECK(std::abs(dark.width() - dark.height()) <= 1.01 / dots);
    CHECK(std::abs(dark.width() + 1 / dots - 2 * 5.67) <= 0.1 + 1 / dots);
    CHECK(std::abs(dark.middle().x + 0.5 / dots - x) <= 0.1 + 0.5 / dots);
  }
}

TEST_CASE("screen svg: classes, subjects, the map, handles") {
  const Font labels = test::label_font();
  const std::string one = to_svg(some_picture(), labels);
  CHECK(one.find("class=\"screen plan\" width=\"200\" height=\"160\" viewBox=\"0 0 200 160\"") !=
        std::string::npos);
  // Two lines of one kind that show the same are one path.
  CHECK(one.find("<g class=\"wood\" fill=\"currentColor\" fill-opacity=\"1\" "
                 "stroke=\"currentColor\" stroke-opacity=\"1\">"
                 "<g class=\"areas\" stroke=\"none\">"
                 "<path data-subject=\"bumper.A.board.front\" d=\"M20.5 30.5l100 0 0 60-100 0z\"/>"
                 "</g>"
                 "<g class=\"fold\" fill=\"none\" stroke-width=\"1.05\" "
                 "stroke-dasharray=\"16 4 0.4 4\"><path data-subject=\"bumper.A.board.front\" "
                 "d=\"M10 140l180 0M10 150l180 0\"/></g></g>") != std::string::npos);

  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  const ScreenPicture plan = screen_plan(made, labels);
  const std::string svg = to_svg(plan, labels);
  CHECK(svg.find(" data-mm-per-px=\"" + plain_number(plan.map->mm_per_px, 9) + "\"") !=
        std::string::npos);
  CHECK(count(svg, "<circle class=\"handle ") == plan.handles.size());
  CHECK(svg.find("<circle class=\"handle bracket\" data-subject=\"bracket.1\" "
                 "data-keys=\"bracket.1.at\" data-side=\"left\" data-corner=\"front\" "
                 "data-mm=\"228.6\" data-least=\"0\" data-most=\"685.8\" data-way=\"0 1\"") !=
        std::string::npos);
  CHECK(svg.find(" r=\"12\"/>") != std::string::npos);
  CHECK(svg.find(" data-mirrored") == std::string::npos);
  CHECK(to_svg(screen_cover(made, 0, labels, {}, CoverShown::AsPrinted), labels)
            .find(" data-mirrored=\"1\"") != std::string::npos);
  CHECK(
      to_svg(screen_chart(made, labels, first_observer(made, {})), labels).find(" data-radii=\"") !=
      std::string::npos);
}

TEST_CASE("screen svg: words are as wide as measured") {
  const Font labels = test::label_font();
  ScreenPicture picture = some_picture();
  screen::Layer words{"words", 1, 1, false, {}};
  const double height = 13 * kMmPerPx * labels.cap_height();
  words.drawing.text(px(20, 120), "front 28 in", height);
  picture.layers.push_back(words);
  const double width = labels.text_width_mm("front 28 in", height) / kMmPerPx;
  CHECK(to_svg(picture, labels)
            .find("<text x=\"20\" y=\"120\" textLength=\"" + plain_number(width, 1) +
                  "\">front 28 in</text>") != std::string::npos);
}

}  // namespace
}  // namespace swathe
