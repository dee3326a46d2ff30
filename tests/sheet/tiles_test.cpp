#include "swathe/sheet/tiles.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include "support/commands.hpp"
#include "support/drawn.hpp"
#include "support/label_face.hpp"
#include "support/picture.hpp"
#include "swathe/write/pdf.hpp"

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

/// Furniture is drawn in kinds of its own; what the page brings is not.
bool is_pages_own(LineKind kind) {
  return kind == LineKind::Cut || kind == LineKind::Stitch || kind == LineKind::Numeral;
}

/// A cover's outline, a circle of stitches, a solid shape: long, with an empty middle.
Page some_page() {
  Page page{700, 500, {}, "A"};
  page.drawing.line(LineKind::Cut, closed_path({{20, 20},
                                                {680, 20},
                                                {680, 120},
                                                {560, 150},
                                                {560, 480},
                                                {430, 480},
                                                {400, 160},
                                                {20, 130}}));
  page.drawing.line(LineKind::Cut, circle({480, 300}, 60));
  page.drawing.line(LineKind::Cut, {40, 50}, {660, 90});
  page.drawing.fill(LineKind::Numeral, {0, 0, 0},
                    {closed_path({{180, 40}, {330, 40}, {330, 110}, {180, 110}}),
                     closed_path({{200, 100}, {310, 100}, {310, 60}, {200, 60}})});
  page.drawing.text({100, 100}, "left end", 5);
  page.drawing.text({500, 200}, "tongue", 5, Anchor::Middle, std::numbers::pi / 2);
  return page;
}

double own_length(const Drawing& drawing) {
  double sum = 0;
  for (const Mark& mark : drawing.marks())
    if (const auto* const line = std::get_if<LineMark>(&mark); line && is_pages_own(line->kind))
      sum += length(line->path);
  return sum;
}

struct Diamond {
  FlatPoint base;  ///< the middle of its long side
  FlatPoint into;  ///< towards its apex
  std::string neighbour;
};

/// The half diamonds of a tile as a person reads them: a solid triangle, and the name beside it.
std::vector<Diamond> diamonds_of(const Page& page) {
  std::vector<Diamond> diamonds;
  for (const Mark& mark : page.drawing.marks()) {
    const auto* const fill = std::get_if<FillMark>(&mark);
    if (!fill || fill->kind != LineKind::Join || fill->colour.red > 0.5) continue;
    REQUIRE(fill->outlines.size() == 1);
    const auto& v = fill->outlines[0].vertices;
    REQUIRE(v.size() == 3);
    Diamond diamond{0.5 * (v[0].at + v[2].at), {}, {}};
    diamond.into = unit(v[1].at - diamond.base);
    double nearest = 1e9;
    for (const Mark& other : page.drawing.marks()) {
      const auto* const text = std::get_if<TextMark>(&other);
      if (!text || !text->text.starts_with("JOIN ")) continue;
      if (const double away = apart(text->at, diamond.base); away < nearest) {
        nearest = away;
        diamond.neighbour = text->text.substr(5);
      }
    }
    diamonds.push_back(diamond);
  }
  return diamonds;
}

/// Where each tile's page lies once the tiles are put together, diamond to diamond. The first lies
/// at the origin; how well every pair fits is checked.
std::map<std::string, FlatPoint> put_together(const Sheet& sheet) {
  std::map<std::string, std::vector<Diamond>> diamonds;
  for (const Page& page : sheet.pages) diamonds[page.name] = diamonds_of(page);
  std::map<std::string, FlatPoint> places = {{sheet.pages.front().name, {0, 0}}};
  for (std::size_t round = 0; round < sheet.pages.size(); ++round)
    for (const auto& [name, own] : diamonds) {
      if (!places.contains(name)) continue;
      for (const Diamond& diamond : own) {
        REQUIRE(diamonds.contains(diamond.neighbour));
        std::vector<Diamond> faced;
        for (const Diamond& other : diamonds[diamond.neighbour])
          if (other.neighbour == name) faced.push_back(other);
        std::vector<Diamond> mine;
        for (const Diamond& d : own)
          if (d.neighbour == diamond.neighbour) mine.push_back(d);
        REQUIRE(faced.size() == mine.size());
        for (std::size_t k = 0; k < mine.size(); ++k) {
          CHECK(norm(mine[k].into + faced[k].into) < 1e-9);  // two halves of one
          const FlatPoint place = places[name] + mine[k].base - faced[k].base;
          const auto [slot, fresh] = places.try_emplace(diamond.neighbour, place);
          CHECK(apart(slot->second, place) < 1e-9);
        }
      }
    }
  CHECK(places.size() == sheet.pages.size());
  return places;
}

/// The page's own lines and fills alone.
Page bare(const Page& page) {
  Page own{page.width_mm, page.height_mm, {}, page.name};
  for (const Mark& mark : page.drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark))
      if (is_pages_own(line->kind)) own.drawing.line(line->kind, line->path);
    if (const auto* const fill = std::get_if<FillMark>(&mark))
      if (is_pages_own(fill->kind)) own.drawing.fill(fill->kind, fill->colour, fill->outlines);
  }
  return own;
}

}  // namespace

TEST_CASE("tile: few sheets, each with its words, scales and page map") {
  const Sheet sheet = tile(some_page(), test::label_face(), letter());
  CHECK(sheet.kind == SheetKind::Tiles);
  CHECK(sheet.stem == "A-tiles");
  // Its box of 660 mm by 460 mm alone takes 4 x 3 tiles upright and 3 x 4 lying; its two empty
  // corners are left out. Its foot alone is longer than two sheets.
  CHECK(sheet.pages.size() < 12);
  CHECK(sheet.pages.size() > 3);
  std::set<std::string> names;
  const test::TemporaryFolder folder;
  const std::string file = folder.write("tiles.pdf", to_pdf(sheet, test::label_face()));
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
          std::string("print at 100 %, no fit to page")})
      CHECK_MESSAGE(words.find(expected) != std::string::npos, expected);
  }
  CHECK(names.size() == sheet.pages.size());
}

TEST_CASE("tile: what fits one sheet comes out on one, whichever way it lies") {
  for (const bool turned : {false, true}) {
    Page page{300, 300, {}, "A"};
    const FlatPoint size = turned ? FlatPoint{240, 140} : FlatPoint{140, 200};
    page.drawing.line(LineKind::Cut, rectangle({10, 10}, FlatPoint{10, 10} + size));
    const Sheet sheet = tile(page, test::label_face(), letter());
    REQUIRE(sheet.pages.size() == 1);
    CHECK((sheet.pages[0].width_mm > sheet.pages[0].height_mm) == turned);
    CHECK(own_length(sheet.pages[0].drawing) == doctest::Approx(2 * (size.x + size.y)));
    CHECK(diamonds_of(sheet.pages[0]).empty());
  }
}

TEST_CASE("tile: nothing but trim marks in the margins") {
  for (const double margin : {8.0, 12.7}) {
    TileOptions options = letter();
    options.margin_mm = margin;
    for (const Page& page : tile(some_page(), test::label_face(), options).pages) {
      const Box inside = Box{{0, 0}, {page.width_mm, page.height_mm}}.grown(-margin + 1e-6);
      const Face face = test::label_face();
      for (const Mark& mark : page.drawing.marks()) {
        if (const auto* const line = std::get_if<LineMark>(&mark))
          if (line->kind != LineKind::Trim) CHECK(inside.holds(bounds(line->path)));
        if (const auto* const text = std::get_if<TextMark>(&mark); text && text->turn == 0) {
          const double width = face.text_width_mm(text->text, text->height_mm);
          const double left = text->at.x - (text->anchor == Anchor::Left     ? 0
                                            : text->anchor == Anchor::Middle ? 0.5 * width
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
  const Face face = test::label_face();
  for (int k = 0; k < 30; ++k) page.drawing.text({30.0 + 21 * k, 25}, "t" + std::to_string(k), 3.5);
  const Sheet sheet = tile(page, face, letter());
  const auto places = put_together(sheet);
  std::size_t moved = 0;
  for (const Mark& mark : page.drawing.marks()) {
    const auto* const text = std::get_if<TextMark>(&mark);
    if (!text) continue;
    std::size_t seen = 0;
    for (const Page& tile_page : sheet.pages)
      for (const Mark& other : tile_page.drawing.marks())
        if (const auto* const there = std::get_if<TextMark>(&other))
          seen += there->text == text->text && there->height_mm == text->height_mm;
    CHECK_MESSAGE(seen == 1, text->text);
  }
  // Relative to the first text, the others lie as they did, but for the moved ones.
  const auto find = [&](const std::string& words) {
    for (const Page& tile_page : sheet.pages)
      for (const Mark& mark : tile_page.drawing.marks())
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

TEST_CASE("tile (1): no length of line is lost, and none doubled but in overlaps") {
  const Page page = some_page();
  const Sheet sheet = tile(page, test::label_face(), letter());
  double shown = 0, in_overlap = 0;
  for (const Page& part : sheet.pages) shown += own_length(part.drawing);
  // What each grey strip shows a second time, measured by sampling the lines.
  for (const Page& part : sheet.pages) {
    std::vector<Path> strips;
    for (const Mark& mark : part.drawing.marks())
      if (const auto* const fill = std::get_if<FillMark>(&mark))
        if (fill->kind == LineKind::Join && fill->colour.red > 0.5)
          for (const Path& strip : fill->outlines) strips.push_back(strip);
    for (const Mark& mark : part.drawing.marks()) {
      const auto* const line = std::get_if<LineMark>(&mark);
      if (!line || !is_pages_own(line->kind)) continue;
      const auto points = flatten(line->path, 0.001);
      for (std::size_t k = 0; k + (line->path.closed ? 0 : 1) < points.size(); ++k) {
        const FlatPoint a = points[k], b = points[(k + 1) % points.size()];
        constexpr int kSamples = 2000;
        for (int s = 0; s < kSamples; ++s) {
          const FlatPoint p = a + (s + 0.5) / kSamples * (b - a);
          if (std::ranges::any_of(strips,
                                  [&](const Path& strip) { return bounds(strip).holds(p); }))
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
  const Face face = test::label_face();
  const Sheet sheet = tile(page, face, letter());
  const auto places = put_together(sheet);
  constexpr int kDpi = 100;

  Sheet whole{"whole", "whole", SheetKind::Pattern, "full size", {bare(page)}};
  const test::Picture single = test::raster(to_pdf(whole, face), 1, kDpi);
  // The first tile's place on the page, from a corner both of them have: the shape's lower left.
  const auto corner_of = [](const Drawing& drawing) {
    Box box;
    for (const Mark& mark : drawing.marks())
      if (const auto* const fill = std::get_if<FillMark>(&mark))
        if (fill->kind == LineKind::Numeral)
          for (const Path& outline : fill->outlines) box.cover(bounds(outline));
    return box;
  };
  Box assembled;
  for (const Page& part : sheet.pages) {
    const Box box = corner_of(part.drawing);
    if (box.empty()) continue;
    assembled.cover(box.lo + places.at(part.name));
    assembled.cover(box.hi + places.at(part.name));
  }
  const Box original = corner_of(page.drawing);
  CHECK(assembled.width() == doctest::Approx(original.width()));
  const FlatPoint origin = assembled.lo - original.lo;

  std::vector<unsigned char> ink(single.greys.size(), 255);
  for (const Page& part : sheet.pages) {
    whole.pages = {bare(part)};
    const test::Picture picture = test::raster(to_pdf(whole, face), 1, kDpi);
    const FlatPoint at = places.at(part.name) - origin;
    const long right = std::lround(at.x * picture.dots_per_mm);
    const long down = std::lround((page.height_mm - at.y - part.height_mm) * picture.dots_per_mm);
    for (long y = 0; y < picture.height; ++y)
      for (long x = 0; x < picture.width; ++x) {
        const long px = x + right, py = y + down;
        if (px < 0 || py < 0 || px >= single.width || py >= single.height) continue;
        auto& dot = ink[static_cast<std::size_t>(py * single.width + px)];
        dot = std::min(dot, static_cast<unsigned char>(
                                picture.grey(static_cast<int>(x), static_cast<int>(y))));
      }
  }
  const auto dark_near = [&](const auto& grey, int x, int y) {
    for (int dy = -2; dy <= 2; ++dy)
      for (int dx = -2; dx <= 2; ++dx) {
        const int px = x + dx, py = y + dy;
        if (px < 0 || py < 0 || px >= single.width || py >= single.height) continue;
        if (grey(px, py) < 160) return true;
      }
    return false;
  };
  const auto of_tiles = [&](int x, int y) {
    return static_cast<int>(ink[static_cast<std::size_t>(y * single.width + x)]);
  };
  const auto of_page = [&](int x, int y) { return single.grey(x, y); };
  int lost = 0, extra = 0, seen = 0;
  for (int y = 0; y < single.height; ++y)
    for (int x = 0; x < single.width; ++x) {
      if (of_page(x, y) < 100) {
        ++seen;
        lost += !dark_near(of_tiles, x, y);
      }
      if (of_tiles(x, y) < 100) extra += !dark_near(of_page, x, y);
    }
  CHECK(seen > 10000);
  CHECK(lost == 0);
  CHECK(extra == 0);
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
    const Sheet sheet = tile(page, test::label_face(), options);
    double shown = 0;
    for (const Page& part : sheet.pages) {
      shown += own_length(part.drawing);
      CHECK(own_length(part.drawing) > 0);  // no empty sheet
    }
    CHECK(shown == doctest::Approx(all).epsilon(1e-9));
  });
}

TEST_CASE("tile: the same page gives the same tiles") {
  const Face face = test::label_face();
  CHECK(to_pdf(tile(some_page(), face, letter()), face) ==
        to_pdf(tile(some_page(), face, letter()), face));
}
