#include "draw/furniture.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "support/label_font.hpp"

using namespace swathe;

namespace {

std::vector<TextMark> texts_of(const Drawing& drawing) {
  std::vector<TextMark> texts;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* const text = std::get_if<TextMark>(&mark)) texts.push_back(*text);
  return texts;
}

std::vector<LineMark> lines_of(const Drawing& drawing, LineKind kind) {
  std::vector<LineMark> lines;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* const line = std::get_if<LineMark>(&mark); line && line->kind == kind)
      lines.push_back(*line);
  return lines;
}

/// The box a text takes, capitals only; for text that is not turned.
plane::Box box_of(const TextMark& text, const Font& font) {
  const double width = font.text_width_mm(text.text, text.height_mm);
  const double left = text.at.x - (text.anchor == draw::Anchor::Left     ? 0
                                   : text.anchor == draw::Anchor::Middle ? 0.5 * width
                                                                         : width);
  return {{left, text.at.y}, {left + width, text.at.y + text.height_mm}};
}

void check_inside(const Drawing& drawing, const plane::Box& box, const Font& font) {
  for (const draw::Mark& mark : drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark))
      CHECK(box.grown(1e-6).holds(bounds(line->path)));
    if (const auto* const text = std::get_if<TextMark>(&mark))
      if (text->turn == 0) CHECK_MESSAGE(box.grown(1e-6).holds(box_of(*text, font)), text->text);
  }
}

}  // namespace

TEST_CASE("style_of: widths of one pen each, nothing thinner than 0.18 mm, layers told apart") {
  // Source: ISO 128-2, line widths 0.18, 0.25, 0.35, 0.5, 0.7 ... mm.
  std::vector<std::string> layers;
  for (int k = 0; k <= static_cast<int>(LineKind::Outline); ++k) {
    const LineStyle& style = style_of(static_cast<LineKind>(k));
    CHECK((style.width_mm == 0.18 || style.width_mm == 0.25 || style.width_mm == 0.35 ||
           style.width_mm == 0.7));
    CHECK(style.dashes_mm.size() % 2 == 0);
    layers.push_back(style.layer);
  }
  std::ranges::sort(layers);
  CHECK(std::ranges::adjacent_find(layers) == layers.end());
  CHECK(style_of(LineKind::Cut).width_mm == 0.7);
  CHECK(style_of(LineKind::Cut).dashes_mm.empty());
  CHECK(style_of(LineKind::CutLast).dashes_mm.empty());
  // Dash and dot; dashes; dash and two dots.
  CHECK(style_of(LineKind::Fold).dashes_mm.size() == 4);
  CHECK(style_of(LineKind::Stitch).dashes_mm.size() == 2);
  CHECK(style_of(LineKind::Corner).dashes_mm.size() == 6);
}

TEST_CASE("wrap_text: no line wider than asked, no word lost") {
  const Font font = test::label_font();
  const std::string words = "Cut these windows last, on the bumper: foam gives and flaps shift.";
  for (const double width : {25.0, 40.0, 80.0, 300.0}) {
    std::string joined;
    for (const std::string& line : wrap_text(font, words, width, 3.5)) {
      CHECK(font.text_width_mm(line, 3.5) <= width);
      joined += (joined.empty() ? "" : " ") + line;
    }
    CHECK(joined == words);
  }
  CHECK(wrap_text(font, words, 1.0, 3.5).size() == 12);  // a word a line
  // A fraction stays with its whole number.
  CHECK(wrap_text(font, "cut 32 1/4 in", 1.0, 3.5) ==
        std::vector<std::string>{"cut", "32 1/4", "in"});
  CHECK(wrap_text(font, "at 2 14 1/16 3", 1.0, 3.5) ==
        std::vector<std::string>{"at", "2", "14 1/16", "3"});
  CHECK(wrap_text(font, "a\n\nb", 100, 3.5) == std::vector<std::string>{"a", "", "b"});
  CHECK(wrap_text(font, "", 100, 3.5).empty());
}

TEST_CASE("wrap_text: words measured apart, each with the space before it, come to their line") {
  const Font font = test::label_font();
  for (const std::string line :
       {"Lay a rule on the check scales of a printed sheet, AV To. (1 1/2)",
        "Ty Wo. left, right; 32 1/4 in - and \"Y\" 'A' f f/t"}) {
    double apart = 0;
    for (std::size_t from = 0; from < line.size();) {
      const std::size_t end = std::min(line.find(' ', from + 1), line.size());
      apart += font.text_width_mm(line.substr(from, end - from), 3.5);
      from = end;
    }
    CHECK(apart == doctest::Approx(font.text_width_mm(line, 3.5)).epsilon(1e-9));
  }
}

TEST_CASE("draw_check_scales: 100 mm and 4 in between their ticks") {
  const Font font = test::label_font();
  Drawing drawing;
  const plane::Box box = draw_check_scales(drawing, font, {20, 80});
  std::vector<double> lengths;
  for (const LineMark& line : lines_of(drawing, LineKind::Scale))
    lengths.push_back(length(line.path));
  REQUIRE(lengths.size() == 6);
  std::ranges::sort(lengths);
  CHECK(lengths[4] == doctest::Approx(100).epsilon(1e-12));
  CHECK(lengths[5] == doctest::Approx(4 * 25.4).epsilon(1e-12));
  check_inside(drawing, box, font);
}

TEST_CASE("draw_check_scale: upright, it runs down from where it is put") {
  const Font font = test::label_font();
  Drawing drawing;
  const plane::Box box =
      draw_check_scale(drawing, font, {20, 180}, 100, "100 mm, measure me", true);
  CHECK(box.lo.y == doctest::Approx(80));
  CHECK(box.hi.y == doctest::Approx(180));
  const auto texts = texts_of(drawing);
  REQUIRE(texts.size() == 1);
  // Its words stand left of the line and read upwards, about its middle.
  CHECK(texts[0].turn == doctest::Approx(std::acos(0.0)));
  CHECK(texts[0].at.y == doctest::Approx(130));
  const plane::Box line = bounds(lines_of(drawing, LineKind::Scale)[0].path);
  CHECK(texts[0].at.x < line.lo.x);
  check_inside(drawing, box, font);
}

TEST_CASE("furniture stays inside the box it says it takes") {
  const Font font = test::label_font();
  SUBCASE("title block") {
    Drawing drawing;
    const plane::Box box = draw_title_block(
        drawing, font, {10, 100}, 80,
        {"Tin Heron, spring covers", "bumper A, cover", "B2 of 14", {"cut 1 red", "INSIDE UP"}});
    check_inside(drawing, box, font);
    CHECK(texts_of(drawing).size() == 5);
    CHECK(box.width() <= 80);
  }
  SUBCASE("line key") {
    Drawing drawing;
    const plane::Box box = draw_line_key(drawing, font, {10, 100},
                                         {LineKind::Cut, LineKind::CutLast, LineKind::Fold,
                                          LineKind::Staple, LineKind::Punch, LineKind::Grain},
                                         2);
    check_inside(drawing, box, font);
    CHECK(texts_of(drawing).size() == 6);
  }
  SUBCASE("caution") {
    Drawing drawing;
    const plane::Box box =
        draw_caution(drawing, font, {10, 100}, 90, "Cut away from your hand, with a fresh blade.");
    check_inside(drawing, box, font);
    CHECK(box.width() == doctest::Approx(90));
  }
}

TEST_CASE("draw_table: cells in their columns, rows that do not fit left for the next page") {
  const Font font = test::label_font();
  Table table;
  table.columns = {{"board", draw::Anchor::Left, 0},
                   {"in", draw::Anchor::Right, 0},
                   {"note", draw::Anchor::Left, 40}};
  for (int k = 0; k < 12; ++k)
    table.rows.push_back(
        {"front " + std::to_string(k), "32 1/4",
         k == 3 ? "laps over both neighbors and is cut a little longer" : "square"});
  Drawing drawing;
  const TableDrawn first = draw_table(drawing, font, {10, 200}, table, 40);
  CHECK(first.next > 0);
  REQUIRE(first.next < 12);
  CHECK(first.box.height() < 40 + 2 * 2.5);
  check_inside(drawing, first.box, font);
  std::size_t next = first.next;
  for (int page = 0; page < 5 && next < 12; ++page)
    next = draw_table(drawing, font, {10, 100}, table, 40, next).next;
  CHECK(next == 12);

  // No cell's words reach into another's.
  const auto texts = texts_of(drawing);
  for (std::size_t a = 0; a < texts.size(); ++a)
    for (std::size_t b = a + 1; b < texts.size(); ++b) {
      const plane::Box one = box_of(texts[a], font), other = box_of(texts[b], font);
      const bool apart = one.hi.x <= other.lo.x || other.hi.x <= one.lo.x ||
                         one.hi.y <= other.lo.y || other.hi.y <= one.lo.y;
      if (a < 3 + 3 * first.next && b < 3 + 3 * first.next) CHECK(apart);
    }
}

TEST_CASE("Drawing::add: text moved and turned, never mirrored") {
  Drawing part;
  part.text({10, 5}, "front", 3.5, draw::Anchor::Left);
  part.text({10, 5}, "up", 3.5, draw::Anchor::Right, 0.3);
  part.line(LineKind::Cut, {{{{0, 0}, 0.5}, {{10, 0}, 0}}, false});
  const plane::Placement mirror{true, 0, {100, 0}};
  Drawing whole;
  whole.add(part, mirror);
  const auto texts = texts_of(whole);
  CHECK(texts[0].at == FlatPoint{90, 5});
  CHECK(texts[0].anchor == draw::Anchor::Right);
  CHECK(texts[0].turn == 0);
  CHECK(texts[1].anchor == draw::Anchor::Left);
  const Font font = test::label_font();
  // Mirrored text covers the mirror image of the ground it covered: both ends of its base line and
  // the side its capitals rise to.
  for (std::size_t k = 0; k < 2; ++k) {
    const auto ground = [&](const TextMark& text) {
      const double width = font.text_width_mm(text.text, text.height_mm);
      const double from = text.anchor == draw::Anchor::Left ? 0 : -width;
      const FlatPoint along = plane::direction(text.turn), up = left_of(along);
      return plane::Polygon{text.at + from * along, text.at + (from + width) * along,
                            text.at + (from + width) * along + text.height_mm * up,
                            text.at + from * along + text.height_mm * up};
    };
    const plane::Polygon before = ground(texts_of(part)[k]), after = ground(texts[k]);
    const std::size_t image[] = {1, 0, 3, 2};
    for (std::size_t c = 0; c < 4; ++c) CHECK(apart(mirror(before[c]), after[image[c]]) < 1e-9);
  }
  // Turned as the drawing is turned.
  Drawing turned;
  turned.add(part, {false, 1.0, {0, 0}});
  CHECK(texts_of(turned)[1].turn == doctest::Approx(1.3));
  CHECK(texts_of(turned)[1].anchor == draw::Anchor::Right);
  // Arcs bend the other way in a mirror.
  CHECK(lines_of(whole, LineKind::Cut)[0].path.vertices[0].bulge == -0.5);
  // A drawing may be added to itself.
  whole.add(whole, {false, 0, {0, 10}});
  CHECK(whole.marks().size() == 6);
}
