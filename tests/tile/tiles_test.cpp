#include "tile/tiles.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>
#include <string>
#include <vector>

#include "draw/text_box.hpp"
#include "support/commands.hpp"
#include "support/drawn.hpp"
#include "support/label_font.hpp"
#include "support/tiles_together.hpp"
#include "swathe/write.hpp"

using namespace swathe;

namespace {

TileOptions letter() {
  TileOptions options;
  options.stem = "A-tiles";
  options.title = "Tin Heron, spring covers";
  options.subject = "bumper A, cover";
  options.cut_words = "cut 1 red, 1 blue";
  options.face_words = "INSIDE UP";
  return options;
}

/// A cover's outline, a circle of stitches, a solid shape: long, with an empty middle.
Page some_page() {
  Page page{700, 500, {}, "A"};
  page.drawing.line(LineKind::Cut, plane::closed_path({{20, 20},
                                                       {680, 20},
                                                       {680, 120},
                                                       {560, 150},
                                                       {560, 480},
                                                       {430, 480},
                                                       {400, 160},
                                                       {20, 130}}));
  page.drawing.line(LineKind::Cut, plane::circle({480, 300}, 60));
  page.drawing.line(LineKind::Cut, {40, 50}, {660, 90});
  page.drawing.fill(LineKind::Numeral, {0, 0, 0},
                    {plane::closed_path({{180, 40}, {330, 40}, {330, 110}, {180, 110}}),
                     plane::closed_path({{200, 100}, {310, 100}, {310, 60}, {200, 60}})});
  page.drawing.text({100, 100}, "left end", 5);
  page.drawing.text({500, 200}, "tongue", 5, draw::Anchor::Middle, std::numbers::pi / 2);
  return page;
}

double own_length(const Drawing& drawing) {
  double sum = 0;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* const line = std::get_if<LineMark>(&mark); line && test::is_pages_own(*line))
      sum += length(line->path);
  return sum;
}

}  // namespace

TEST_CASE("tile: few sheets, each with its words, scales and page map") {
  const Sheet sheet = tile(some_page(), test::label_font(), letter());
  CHECK(sheet.kind == SheetKind::Tiles);
  CHECK(sheet.stem == "A-tiles");
  // Its box of 660 mm by 460 mm alone takes 4 x 3 tiles upright and 3 x 4 lying; its two empty
  // corners are left out. Its foot alone is longer than two sheets.
  CHECK(sheet.pages.size() < 12);
  CHECK(sheet.pages.size() > 3);
  std::set<std::string> names;
  const test::TemporaryFolder folder;
  const std::string file = folder.write("tiles.pdf", to_pdf(sheet, test::label_font()));
  for (std::size_t k = 0; k < sheet.pages.size(); ++k) {
    const Page& page = sheet.pages[k];
    names.insert(page.name);
    const std::string n = std::to_string(k + 1);
    const std::string words = test::run("pdftotext -f " + n + " -l " + n + " " + file + " -");
    CAPTURE(words);
    for (const std::string& expected :
         {page.name + " of " + std::to_string(sheet.pages.size()), std::string("TOP"),
          std::string("INSIDE UP"), std::string("cut 1 red, 1 blue"), std::string("LONG GRAIN"),
          std::string("Tin Heron, spring covers"), std::string("bumper A, cover"),
          std::string("100 mm, measure me"), std::string("4 in, measure me"),
          std::string("print at 100 %, not \"fit to page\"")})
      CHECK_MESSAGE(words.find(expected) != std::string::npos, expected);
  }
  CHECK(names.size() == sheet.pages.size());
}

TEST_CASE("tile: what fits one sheet comes out on one, whichever way it lies") {
  for (const bool turned : {false, true}) {
    Page page{300, 300, {}, "A"};
    const FlatPoint size = turned ? FlatPoint{240, 140} : FlatPoint{140, 200};
    page.drawing.line(LineKind::Cut, rectangle({10, 10}, FlatPoint{10, 10} + size));
    const Sheet sheet = tile(page, test::label_font(), letter());
    REQUIRE(sheet.pages.size() == 1);
    CHECK((sheet.pages[0].width_mm > sheet.pages[0].height_mm) == turned);
    CHECK(own_length(sheet.pages[0].drawing) == doctest::Approx(2 * (size.x + size.y)));
    CHECK(test::diamonds_of(sheet.pages[0], {}).empty());
  }
}

TEST_CASE("tile: nothing but trim marks in the margins") {
  for (const double margin : {8.0, 12.7}) {
    TileOptions options = letter();
    options.margin_mm = margin;
    for (const Page& page : tile(some_page(), test::label_font(), options).pages) {
      const plane::Box inside =
          plane::Box{{0, 0}, {page.width_mm, page.height_mm}}.grown(-margin + 1e-6);
      const Font face = test::label_font();
      for (const draw::Mark& mark : page.drawing.marks()) {
        if (const auto* const line = std::get_if<LineMark>(&mark))
          if (line->kind != LineKind::Trim) CHECK(inside.holds(bounds(line->path)));
        if (const auto* const text = std::get_if<TextMark>(&mark); text && text->turn == 0) {
          const double width = face.text_width_mm(text->text, text->height_mm);
          const double left = text->at.x - (text->anchor == draw::Anchor::Left     ? 0
                                            : text->anchor == draw::Anchor::Middle ? 0.5 * width
                                                                                   : width);
          CHECK_MESSAGE(left >= inside.lo.x, text->text);
          CHECK_MESSAGE(left + width <= inside.hi.x, text->text);
          CHECK_MESSAGE(text->at.y >= inside.lo.y - 1e-6, text->text);
          CHECK_MESSAGE(text->height_mm >= 2.5, text->text);
        }
      }
    }
  }
}

TEST_CASE("tile: every text once, whole on its tile, and moved only where it must be") {
  Page page = some_page();
  const Font face = test::label_font();
  for (int k = 0; k < 30; ++k) page.drawing.text({30.0 + 21 * k, 25}, "t" + std::to_string(k), 3.5);
  const Sheet sheet = tile(page, face, letter());
  const auto places = test::put_together(sheet);
  std::size_t moved = 0;
  for (const draw::Mark& mark : page.drawing.marks()) {
    const auto* const text = std::get_if<TextMark>(&mark);
    if (!text) continue;
    std::size_t seen = 0;
    for (const Page& tile_page : sheet.pages)
      for (const draw::Mark& other : tile_page.drawing.marks())
        if (const auto* const there = std::get_if<TextMark>(&other))
          seen += there->text == text->text && there->height_mm == text->height_mm;
    CHECK_MESSAGE(seen == 1, text->text);
  }
  // Relative to the first text, the others lie as they did, but for the moved ones.
  const auto find = [&](const std::string& words) {
    for (const Page& tile_page : sheet.pages)
      for (const draw::Mark& mark : tile_page.drawing.marks())
        if (const auto* const text = std::get_if<TextMark>(&mark); text && text->text == words)
          return places.at(tile_page.name) + text->at;
    return FlatPoint{};
  };
  std::map<long, int> shifts;
  for (int k = 0; k < 30; ++k) {
    const FlatPoint at = find("t" + std::to_string(k)) - FlatPoint{30.0 + 21 * k, 25};
    ++shifts[std::lround(1000 * (at.x + 1000 * at.y))];
  }
  int most = 0;
  for (const auto& [shift, count] : shifts) most = std::max(most, count);
  moved = static_cast<std::size_t>(30 - most);
  CHECK(moved <= 5);  // no more than joins cross the row
}

TEST_CASE("tile: words that are moved stay apart from others, or they would read as one") {
  Page page{200, 300, {}, "A"};
  page.drawing.line(LineKind::Cut, plane::rectangle({10, 250}, {190, 290}));
  for (int k = 0; k < 40; ++k)  // most of them below any tile
    page.drawing.text({10, 240 - 6.0 * k}, "words " + std::to_string(k));
  const Sheet sheet = tile(page, test::label_font(), letter());
  REQUIRE(sheet.pages.size() == 1);
  std::vector<TextBox> boxes;
  for (const draw::Mark& mark : sheet.pages.front().drawing.marks())
    if (const auto* const text = std::get_if<TextMark>(&mark);
        text && text->text.starts_with("words"))
      boxes.push_back(box_of(*text, test::label_font()).grown(0.45));  // of 1 mm half, and rounding
  CHECK(boxes.size() == 40);
  for (std::size_t a = 0; a < boxes.size(); ++a)
    for (std::size_t b = 0; b < a; ++b) CHECK_FALSE(overlap(boxes[a], boxes[b]));
}

TEST_CASE("tile (1): no length of line is lost, and none doubled but in overlaps") {
  const Page page = some_page();
  const Sheet sheet = tile(page, test::label_font(), letter());
  double shown = 0, in_overlap = 0;
  for (const Page& part : sheet.pages) shown += own_length(part.drawing);
  // What each gray strip shows a second time, measured by sampling the lines.
  for (const Page& part : sheet.pages) {
    std::vector<plane::Path> strips;
    for (const draw::Mark& mark : part.drawing.marks())
      if (const auto* const fill = std::get_if<FillMark>(&mark))
        if (fill->kind == LineKind::Join && fill->color.red > 0.5)
          for (const plane::Path& strip : fill->outlines) strips.push_back(strip);
    for (const draw::Mark& mark : part.drawing.marks()) {
      const auto* const line = std::get_if<LineMark>(&mark);
      if (!line || !test::is_pages_own(*line)) continue;
      const auto points = flatten(line->path, 0.001);
      for (std::size_t k = 0; k + (line->path.closed ? 0 : 1) < points.size(); ++k) {
        const FlatPoint a = points[k], b = points[(k + 1) % points.size()];
        constexpr int kSamples = 2000;
        for (int s = 0; s < kSamples; ++s) {
          const FlatPoint p = a + (s + 0.5) / kSamples * (b - a);
          if (std::ranges::any_of(strips,
                                  [&](const plane::Path& strip) { return bounds(strip).holds(p); }))
            in_overlap += apart(a, b) / kSamples;
        }
      }
    }
  }
  CHECK(in_overlap > 0);
  CHECK(shown - in_overlap == doctest::Approx(own_length(page.drawing)).epsilon(2e-4));
}

TEST_CASE("tile (2): put together by their marks, the tiles are the page") {
  const Page page = some_page();
  test::check_together(page, tile(page, test::label_font(), letter()), test::label_font());
}

TEST_CASE("tile: drawn pages lose no line, whatever the paper") {
  test::for_drawn_cases("tiles", 12, [](auto& rng) {
    Page page{900, 900, {}, "A"};
    double all = 0;
    for (int k = 0; k < 12; ++k) {
      const FlatPoint a{test::drawn(rng, 0, 900), test::drawn(rng, 0, 900)};
      const FlatPoint b = a + FlatPoint{test::drawn(rng, -200, 200), test::drawn(rng, -80, 80)};
      page.drawing.line(LineKind::Cut, a, b);
      all += apart(a, b);
    }
    TileOptions options = letter();
    options.width_mm = test::drawn(rng, 160, 500);
    options.height_mm = test::drawn(rng, 200, 500);
    options.margin_mm = test::drawn(rng, 5, 20);
    options.overlap_mm = 0;  // nothing is shown twice then
    const Sheet sheet = tile(page, test::label_font(), options);
    double shown = 0;
    for (const Page& part : sheet.pages) {
      shown += own_length(part.drawing);
      CHECK(own_length(part.drawing) > 0);  // no empty sheet
    }
    CHECK(shown == doctest::Approx(all).epsilon(1e-9));
  });
}

TEST_CASE("tile: the same page gives the same tiles") {
  const Font face = test::label_font();
  CHECK(to_pdf(tile(some_page(), face, letter()), face) ==
        to_pdf(tile(some_page(), face, letter()), face));
}
