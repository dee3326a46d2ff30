#include "sheet/numeral_sheets.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "draw/text_box.hpp"
#include "numeral/size.hpp"
#include "plane/clip.hpp"
#include "sheet/numeral_cells.hpp"
#include "support/fonts.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

/// A job from its text, numerals by `keys`.
Made made_with(const std::string& keys, const std::string& width = "28 in",
               const std::string& rest = "") {
  const std::string text = fmt::format(R"([job]
title = "Tin Heron, spring covers"
number = "20486"
season = "2020"
[frame]
width = "{}"
depth = "30 in"
{}
[[bumper]]
name = "A"
from = ["front", "50%"]
to = ["back", "50%"]
[[bumper]]
name = "B"
from = ["back", "50%"]
to = ["front", "50%"]
[numerals]
spacing = "7/16 in"
{}
)",
                                       width, rest, keys);
  return test::made(text);
}

Sheet sheet_of(const Made& made) {
  return numeral_sheets(made, made.job.paper, test::label_font());
}

/// Closed lines of one kind, page by page, as areas in the order in which they are drawn; an area
/// is told from the next by its outer outline.
std::vector<plane::Region> areas(const Sheet& sheet, LineKind kind) {
  std::vector<plane::Region> found;
  for (const Page& page : sheet.pages)
    for (const draw::Mark& mark : page.drawing.marks()) {
      const auto* line = std::get_if<LineMark>(&mark);
      if (!line || line->kind != kind || !line->path.closed) continue;
      plane::Polygon contour;
      for (const plane::Vertex& v : line->path.vertices) contour.push_back(v.at);
      if (area(contour) > 0)
        found.push_back({contour});
      else
        found.back().push_back(contour);
    }
  return found;
}

/// The area at the origin, turned over left to right where asked.
plane::Region at_origin(const plane::Region& region, bool mirrored) {
  plane::Region result;
  for (plane::Polygon contour : region) {
    for (FlatPoint& p : contour) p.x = mirrored ? -p.x : p.x;
    if (mirrored) std::ranges::reverse(contour);
    result.push_back(contour);
  }
  const FlatPoint lo = bounds(result).lo;
  for (plane::Polygon& contour : result)
    for (FlatPoint& p : contour) p = p - lo;
  return result;
}

double difference(const plane::Region& a, const plane::Region& b) {
  return area(subtract(a, b)) + area(subtract(b, a));
}

bool says(const Page& page, const std::string& words) {
  return std::ranges::any_of(test::texts_of(page.drawing), [&](const TextMark& text) {
    return text.text.find(words) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("numeral sheets: what is ironed on is the mirror image of what is sewn on, and says so") {
  const Made ironed = made_with("method = \"iron-on\""), sewn = made_with("method = \"sew-on\"");
  const Sheet mirrored = sheet_of(ironed), plain = sheet_of(sewn);
  const auto cut = areas(mirrored, LineKind::Cut), stitched = areas(plain, LineKind::Stitch);
  REQUIRE(cut.size() == 5);
  REQUIRE(stitched.size() == 5);
  for (const plane::Region& digit : cut) {
    double same = 1e9, unlike = 1e9;
    for (const plane::Region& other : stitched) {
      same = std::min(same, difference(at_origin(digit, true), at_origin(other, false)));
      unlike = std::min(unlike, difference(at_origin(digit, false), at_origin(other, false)));
    }
    CHECK(same < 0.5);     // mm2, of the grid along a digit's outline
    CHECK(same < unlike);  // no digit of this number is its own mirror image
  }
  for (const Page& page : mirrored.pages) {
    const bool full_size = says(page, "measure me");
    const auto texts = test::texts_of(page.drawing);
    const auto banner = std::ranges::find_if(
        texts, [](const TextMark& text) { return text.text.starts_with("MIRRORED:"); });
    CHECK((banner != texts.end()) == full_size);
    if (full_size) CHECK(banner->height_mm > 8);
  }
  CHECK(says(mirrored.pages.front(), "press cloth"));
  CHECK(says(mirrored.pages.front(), "heat"));
}

TEST_CASE("numeral sheets: sewn digits have their seam, their allowance and their place") {
  const Made made = made_with("method = \"sew-on\"");
  const Sheet sheet = sheet_of(made);
  const auto cut = areas(sheet, LineKind::Cut), place = areas(sheet, LineKind::Stitch);
  REQUIRE(cut.size() == place.size());
  double drawn = 0, wanted = 0;
  for (const plane::Region& digit : place) drawn += area(digit);
  for (const Digit& digit : made.numerals->digits) wanted += area(digit.outline);
  CHECK(drawn == doctest::Approx(wanted));
  for (std::size_t k = 0; k < cut.size(); ++k) {
    const plane::Box outer = bounds(cut[k]), inner = bounds(place[k]);
    CHECK(inner.lo.x - outer.lo.x == doctest::Approx(6.35).epsilon(0.002));
    CHECK(outer.hi.y - inner.hi.y == doctest::Approx(6.35).epsilon(0.002));
  }
  CHECK(says(sheet.pages.front(), "Needle"));
}

TEST_CASE(
    "numeral sheets: a paint mask is the whole number in one piece, as it stands on the cloth") {
  for (const char* rest : {"[paper]\nsheet = \"arch-c\"", ""}) {
    CAPTURE(rest);
    const Made made = made_with("method = \"paint-mask\"\nspares = 1", "28 in", rest);
    const Sheet sheet = sheet_of(made);
    // Four places and a spare in two colors.
    bool counted = false;
    for (const Page& page : sheet.pages) counted = counted || says(page, "20486: cut 10 times");
    CHECK(counted);
    CHECK(says(sheet.pages.front(), "Spray"));
    if (sheet.pages.size() > 2) continue;  // in tiles: their own tests put them together
    plane::Box all;
    for (const plane::Region& hole : areas(sheet, LineKind::Cut)) all.cover(bounds(hole));
    CHECK(all.width() == doctest::Approx(made.numerals->placed.front().width));
  }
}

TEST_CASE("numeral sheets: a stencil for a whole number has each digit in its place") {
  const Made made = made_with("stencil_for = \"number\"", "28 in", "[paper]\nsheet = \"arch-d\"");
  const std::vector<NumeralCell> cells = numeral_cells(made, test::label_font());
  REQUIRE(cells.size() == 1);
  CHECK(cells.front().name == "stencil 20486");
  const Sheet sheet = sheet_of(made);
  CHECK(says(sheet.pages.front(), "20486: use 8 times"));  // four places in two colors
  plane::Box all;
  for (const plane::Region& hole : areas(sheet, LineKind::Cut)) all.cover(bounds(hole));
  CHECK(all.width() == doctest::Approx(made.numerals->placed.front().width));
}

TEST_CASE("numeral sheets: every other digit first where a stencil covers the one beside it") {
  // A stencil has 12 mm of sheet round its digit.
  const auto told = [](const std::string& keys, double gap) {
    Made made = made_with(keys);
    for (PlacedNumeral& number : made.numerals->placed)
      for (std::size_t k = 1; k < number.digits.size(); ++k) {
        const PlacedDigit& before = number.digits[k - 1];
        PlacedDigit& digit = number.digits[k];
        digit.origin.x = before.origin.x + bounds(made.numerals->shape(before.digit).outline).hi.x +
                         gap - bounds(made.numerals->shape(digit.digit).outline).lo.x;
      }
    return says(sheet_of(made).pages.front(), "every other digit first");
  };
  CHECK(told("method = \"stencil\"", 11.9));
  CHECK_FALSE(told("method = \"stencil\"", 12.1));
  CHECK_FALSE(told("stencil_for = \"number\"", 11.9));
  CHECK_FALSE(told("method = \"iron-on\"", 11.9));
}

TEST_CASE("numeral sheets: bridges are told of where there are some, and all pages are counted") {
  const Made bridged = made_with("method = \"stencil\"");
  CHECK(says(sheet_of(bridged).pages.front(), "Leave the bridges"));
  std::string text = job_text(bridged.job);
  text.replace(text.find("20486"), 5, "25");  // no digit of it has an island
  const Made plain = test::made(text);
  for (const Digit& digit : plain.numerals->digits) CHECK(digit.bridges.empty());
  for (const Page& page : sheet_of(plain).pages) CHECK_FALSE(says(page, "bridges"));
  for (const Made* made : {&bridged, &plain}) {
    const Sheet sheet = sheet_of(*made);
    for (std::size_t k = 0; k < sheet.pages.size(); ++k)
      CHECK(says(sheet.pages[k], fmt::format("page {} of {}", k + 1, sheet.pages.size())));
  }
}

TEST_CASE("numeral sheets: what stands below narrow digits keeps apart") {
  std::string text = job_text(made_with("").job);
  text.replace(text.find("20486"), 5, "17147");
  for (const char* paper : {"letter", "a4"}) {
    Made made = test::made(text);
    const auto size = find_paper(paper);
    made.job.paper.width = size->width;
    made.job.paper.height = size->height;
    const Page page = sheet_of(made).pages.back();
    CHECK(says(page, "% wide enough"));
    // Half a letter between two figures of a row, or they are read as one.
    std::vector<TextBox> boxes;
    for (const TextMark& one : test::texts_of(page.drawing))
      if (one.text.find("wide enough") != std::string::npos)
        boxes.push_back(box_of(one, test::label_font()).grown(1.0));
    REQUIRE(boxes.size() == 3);
    for (std::size_t a = 0; a < boxes.size(); ++a)
      for (std::size_t b = 0; b < a; ++b) CHECK_FALSE(overlap(boxes[a], boxes[b]));
  }
}

TEST_CASE("numeral sheets: parts of a split number have masks of their own") {
  const Made made = made_with(
      "method = \"paint-mask\"\n[[numerals.place]]\nbumper = \"B\"\nside = "
      "\"front\"\nsplit = 2\n[[numerals.place]]\nbumper = \"A\"\nside = "
      "\"left\"");
  REQUIRE(made.numerals->placed.size() == 3);
  CHECK(made.numerals->showings() == 2);
  CHECK(masks_of(*made.numerals, "20", 1, 2) == 2);
  CHECK(masks_of(*made.numerals, "486", 1, 2) == 2);
  CHECK(masks_of(*made.numerals, "20486", 1, 2) == 4);
  std::vector<std::string> names;
  for (const NumeralCell& cell : numeral_cells(made, test::label_font()))
    names.push_back(cell.name);
  CHECK(names == std::vector<std::string>{"mask 20", "mask 486", "mask 20486"});
}

TEST_CASE("numeral sheets: each digit with its count; a white outline makes a second piece") {
  for (const char* method : {"stencil", "iron-on", "sew-on"}) {
    CAPTURE(method);
    const Made made = made_with(
        fmt::format("method = \"{}\"\ncolor = \"#000000\"\noutline = \"1/8 in\"", method));
    const Sheet sheet = sheet_of(made);
    for (const Digit& digit : made.numerals->digits)
      for (const char* layer : {"white", "color"}) {
        const std::string caption =
            fmt::format("{}, {}: {} {} times", digit.digit, layer,
                        std::string(method) == "stencil" ? "use" : "cut", digit.count);
        CHECK_MESSAGE(std::ranges::any_of(sheet.pages, [&](auto& p) { return says(p, caption); }),
                      caption);
        CHECK(digit.count == 8);  // four places on two colors, once in the number
      }
  }
}

TEST_CASE("numeral sheets: texts keep apart and on the page, whatever the method") {
  const Font face = test::label_font();
  for (const char* method : {"stencil", "iron-on", "sew-on", "paint-mask"})
    for (const char* paper : {"letter", "a4", "a3", "tabloid"}) {
      CAPTURE(method);
      CAPTURE(paper);
      const Made made = made_with(fmt::format("method = \"{}\"\nspares = 2", method), "28 in",
                                  fmt::format("[paper]\nsheet = \"{}\"", paper));
      for (const Page& page : sheet_of(made).pages)
        for (const std::string& fault : test::text_faults(page, face)) FAIL_CHECK(fault);
    }
}

// Five stencils of 2 to 2.4 in, 5 in high with their strips, on letter: three lie side by side the
// wide way, two the other, so two pages are the fewest with the head's room on the first.
TEST_CASE("numeral sheets: as few pages as may be") {
  const Sheet sheet = sheet_of(made_with("method = \"stencil\""));
  const auto full_size =
      std::ranges::count_if(sheet.pages, [](const Page& page) { return says(page, "measure me"); });
  CHECK(full_size == 2);
  // On a large sheet all of them lie on one.
  const Sheet large =
      sheet_of(made_with("method = \"stencil\"", "28 in", "[paper]\nsheet = \"arch-c\""));
  CHECK(std::ranges::count_if(large.pages,
                              [](const Page& page) { return says(page, "measure me"); }) == 1);
}

TEST_CASE("white outlines: the area grows by Steiner's formula, corner by corner") {
  // Source: Schneider, Convex Bodies, section 4: a corner that turns left by t adds r^2 t / 2 to
  // A + P r; one that turns right takes r^2 tan(t / 2), where the moved edges run into each other.
  constexpr double r = 0.3;  // mm: less than any edge of these outlines would let vanish
  for (const BundledFont& bundled : bundled_fonts()) {
    const auto set = set_number(test::opened(bundled), "0", inches(4), {});
    REQUIRE(set.has_value());
    for (char digit = '0'; digit <= '9'; ++digit) {
      CAPTURE(bundled.name);
      CAPTURE(digit);
      const auto one = set_number(test::opened(bundled), std::string(1, digit), inches(4), {});
      REQUIRE(one.has_value());
      const plane::Region& outline = one->shapes.front().outline;
      double expected = area(outline);
      for (const plane::Polygon& contour : outline)
        for (std::size_t i = 0; i < contour.size(); ++i) {
          const FlatPoint a = contour[i], b = contour[(i + 1) % contour.size()],
                          c = contour[(i + 2) % contour.size()];
          expected += r * apart(a, b);
          const double turn = std::atan2(cross(b - a, c - b), dot(b - a, c - b));
          expected += r * r * (turn > 0 ? 0.5 * turn : std::tan(0.5 * turn));
        }
      // Clipper's arcs lie within 0.005 mm inside of the true ones.
      CHECK(std::abs(area(offset(outline, r)) - expected) < 2e-4 * expected);
    }
  }
}

}  // namespace swathe
