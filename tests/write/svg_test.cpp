#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "support/commands.hpp"
#include "support/label_font.hpp"
#include "support/picture.hpp"
#include "swathe/write.hpp"

using namespace swathe;
using test::TemporaryFolder;

namespace {

Page some_page() {
  Page page{210, 297, {}, ""};
  page.drawing.fill(LineKind::Numeral, {0.9, 0.9, 0.9}, {plane::rectangle({120, 20}, {180, 60})});
  page.drawing.line(LineKind::Cut, plane::rectangle({20, 30}, {120, 80}));
  page.drawing.line(LineKind::Fold, {20, 100}, {180, 120});
  page.drawing.line(LineKind::Punch, plane::circle({60, 160}, 25));
  // Less and more than half a circle, bent either way.
  page.drawing.line(LineKind::Cut,
                    {{{{100, 200}, 0.4}, {{140, 200}, -0.4}, {{180, 200}, 0}}, false});
  page.drawing.line(LineKind::Cut,
                    {{{{100, 150}, 1.8}, {{120, 150}, -1.8}, {{140, 150}, 0}}, false});
  page.drawing.text({30, 250}, "CUT <1> \"red\" & blue", 8, draw::Anchor::Left, 0.1);
  page.drawing.text({105, 230}, "cut in the middle", 5, draw::Anchor::Middle);
  page.drawing.text({200, 280}, "WAVY Top, 1/16 in", 6, draw::Anchor::Right);
  page.drawing.text({15, 280}, "upright to its end", 4, draw::Anchor::Right, std::numbers::pi / 2);
  return page;
}

/// By librsvg's rsvg-convert: SVG to PDF at its own size, then rastered as any PDF.
std::string pdf_by_librsvg(const std::string& svg) {
  const TemporaryFolder folder;
  const std::string file = folder.write("page.svg", svg);
  test::run("rsvg-convert -f pdf -o " + folder.file("page.pdf") + " " + file);
  return folder.read("page.pdf");
}

}  // namespace

TEST_CASE("to_svg: the page has its size in millimeters") {
  // Source: CSS Values and Units, section 6.2: 1 in = 25.4 mm = 96 px; A4 is 793.70 by 1122.52.
  const std::string svg = to_svg(some_page(), "page", test::label_font());
  CHECK(svg.find("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\"") != std::string::npos);
  const TemporaryFolder folder;
  test::run("rsvg-convert -d 96 -p 96 -o " + folder.file("page.png") + " " +
            folder.write("page.svg", svg));
  const std::string png = folder.read("page.png");
  const auto number = [&](std::size_t at) {
    unsigned value = 0;
    for (std::size_t k = 0; k < 4; ++k)
      value = 256 * value + static_cast<unsigned char>(png.at(at + k));
    return static_cast<double>(value);
  };
  CHECK(std::abs(number(16) - 793.7008) <= 1);
  CHECK(std::abs(number(20) - 1122.5197) <= 1);
}

TEST_CASE("to_svg: drawn by librsvg it is what the PDF is") {
  const Page page = some_page();
  const Font font = test::label_font();
  constexpr int kDpi = 150;
  const test::Picture ours =
      test::raster(to_pdf(Sheet{{"", "", SheetKind::Pattern, ""}, {page}}, font), 1, kDpi);
  const test::Picture theirs = test::raster(pdf_by_librsvg(to_svg(page, "page", font)), 1, kDpi);
  REQUIRE(std::abs(ours.width - theirs.width) <= 1);
  REQUIRE(std::abs(ours.height - theirs.height) <= 1);
  const int width = std::min(ours.width, theirs.width);
  const int height = std::min(ours.height, theirs.height);
  const auto dark_near = [&](const test::Picture& picture, int x, int y) {
    for (int dy = -2; dy <= 2; ++dy)
      for (int dx = -2; dx <= 2; ++dx) {
        const int px = x + dx, py = y + dy;
        if (px >= 0 && py >= 0 && px < width && py < height && picture.is_dark(px, py, 170))
          return true;
      }
    return false;
  };
  int seen = 0, missing = 0, extra = 0;
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      if (ours.is_dark(x, y, 100)) {
        ++seen;
        missing += !dark_near(theirs, x, y);
      }
      if (theirs.is_dark(x, y, 100)) extra += !dark_near(ours, x, y);
    }
  CHECK(seen > 3000);
  CHECK(missing == 0);
  CHECK(extra == 0);
}

TEST_CASE("to_svg: a layer a kind, under its own name") {
  const std::string svg = to_svg(some_page(), "page", test::label_font());
  for (const char* layer : {"CUT", "FOLD", "PUNCH", "NUMERAL-TINT", "TEXT"}) {
    CAPTURE(layer);
    const std::string group = std::string("<g id=\"") + layer + "\"";
    const std::size_t at = svg.find(group);
    REQUIRE(at != std::string::npos);
    CHECK(svg.find(group, at + 1) == std::string::npos);
  }
  CHECK(svg.find("id=\"STITCH\"") == std::string::npos);  // no empty layers
  CHECK(svg.find("NUMERAL-TINT") < svg.find("id=\"CUT\""));
  CHECK(svg.find("id=\"CUT\"") < svg.find("id=\"TEXT\""));
}

TEST_CASE("to_svg (2): well-formed whatever the words") {
  Page page{100, 100, {}, ""};
  page.drawing.text({10, 50}, "a & b < c > \"d\" 'e' \x01\x1f\t\xc2\xbd", 5);
  const TemporaryFolder folder;
  const std::string svg = to_svg(page, "</title><x & \"y\"", test::label_font());
  const std::string file = folder.write("page.svg", svg);
  test::run("rsvg-convert -o " + folder.file("page.png") + " " + file);  // refuses broken XML
  CHECK(svg.find("aria-label=\"a &amp; b &lt; c &gt; &quot;d&quot; 'e' \xc2\xbd\"") !=
        std::string::npos);
}

TEST_CASE("to_svg: a letter is drawn once, however often it stands") {
  const auto count = [](const std::string& svg, const std::string& what) {
    std::size_t found = 0;
    for (std::size_t at = svg.find(what); at != std::string::npos; at = svg.find(what, at + 1))
      ++found;
    return found;
  };
  Page page{100, 100, {}, ""};
  for (int k = 0; k < 40; ++k) page.drawing.text({10, 2.0 * k}, "noon on no moon", 2);
  const std::string svg = to_svg(page, "page", test::label_font());
  CHECK(count(svg, "<path") == 3);  // n, o, m
  CHECK(count(svg, "<use") == 40 * 12);
}

TEST_CASE("to_svg (1): the same page gives the same bytes") {
  const Font font = test::label_font();
  CHECK(to_svg(some_page(), "page", font) == to_svg(some_page(), "page", font));
}
