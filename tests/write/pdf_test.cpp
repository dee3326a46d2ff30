#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "support/commands.hpp"
#include "support/label_font.hpp"
#include "support/picture.hpp"
#include "swathe/write.hpp"

using namespace swathe;
using test::TemporaryFolder;

namespace {

Sheet sheet_of(std::vector<Page> pages) {
  Sheet sheet;
  sheet.stem = "try";
  sheet.title = "Tin Heron, bumper A";
  sheet.pages = std::move(pages);
  return sheet;
}

std::string pdf_of(const Page& page) { return to_pdf(sheet_of({page}), test::label_font()); }

/// The first and last dark dot of a row.
struct DarkRun {
  int first = -1, last = -1;
};
DarkRun dark_run(const test::Picture& picture, int y) {
  DarkRun run;
  for (int x = 0; x < picture.width; ++x)
    if (picture.is_dark(x, y)) {
      if (run.first < 0) run.first = x;
      run.last = x;
    }
  return run;
}

}  // namespace

TEST_CASE("to_pdf: a clean file of one PDF version, with its title, maker and date") {
  Page page{210, 297, {}, "B2"};
  page.drawing.line(LineKind::Cut, plane::rectangle({20, 20}, {120, 70}));
  page.drawing.text({30, 100}, "CUT 1 RED", 5);
  PdfOptions options;
  options.created = "2026-01-31T12:00:00Z";
  const std::string pdf = to_pdf(sheet_of({page}), test::label_font(), options);

  const TemporaryFolder folder;
  const std::string file = folder.write("sheet.pdf", pdf);
  CHECK(test::run("qpdf --check " + file).find("No syntax or stream encoding errors found") !=
        std::string::npos);
  const std::string info = test::run("TZ=UTC pdfinfo -isodates " + file);
  CHECK(info.find("Tin Heron, bumper A") != std::string::npos);
  const auto says = [&](const std::string& key, const std::string& value) {
    const std::size_t at = info.find(key + ":");
    REQUIRE(at != std::string::npos);
    const std::size_t from = info.find_first_not_of(' ', at + key.size() + 1);
    return info.compare(from, value.size(), value) == 0;
  };
  CAPTURE(info);
  CHECK(says("Creator", "Swathe"));
  CHECK(says("CreationDate", "2026-01-31T12:00:00Z"));
  CHECK(says("PDF version", "1.7"));  // of the keys that ask for true size: ISO 32000-1, table 150
  CHECK(says("Pages", "1\n"));
}

TEST_CASE("to_pdf (3): what is at full size asks not to be scaled, nor printed on both sides") {
  Page page{210, 297, {}, "B2"};
  page.drawing.text({30, 100}, "CUT 1 RED", 5);
  const TemporaryFolder folder;
  // As qpdf, which follows the table of objects, reads the catalog.
  const auto catalog = [&](SheetKind kind) {
    Sheet sheet = sheet_of({page, page});
    sheet.kind = kind;
    const std::string file = folder.write("s.pdf", to_pdf(sheet, test::label_font()));
    CHECK(test::run("qpdf --check " + file).find("No syntax or stream encoding errors found") !=
          std::string::npos);
    CHECK(test::run("pdftotext " + file + " -").find("CUT 1 RED") != std::string::npos);
    const std::string trailer = test::run("qpdf --show-object=trailer " + file);
    const std::size_t root = trailer.find("/Root ");
    REQUIRE(root != std::string::npos);
    const std::string number = std::to_string(std::stoi(trailer.substr(root + 6)));
    return test::run("qpdf --show-object=" + number + " " + file);
  };
  for (const SheetKind kind :
       {SheetKind::TestPage, SheetKind::Pattern, SheetKind::Tiles, SheetKind::Fold,
        SheetKind::Templates, SheetKind::Numerals, SheetKind::Placing, SheetKind::Model}) {
    const std::string words = catalog(kind);
    CAPTURE(words);
    CHECK(words.find("/PrintScaling /None") != std::string::npos);
    CHECK(words.find("/Duplex /Simplex") != std::string::npos);
    CHECK(words.find("/Pages ") != std::string::npos);
    CHECK(words.find("/PageLabels ") != std::string::npos);  // what the catalog had is kept
  }
  for (const SheetKind kind :
       {SheetKind::Start, SheetKind::Book, SheetKind::Views, SheetKind::Measures})
    CHECK(catalog(kind).find("ViewerPreferences") == std::string::npos);
}

TEST_CASE("to_pdf (2): pages have the sizes of ISO 216 and ANSI paper") {
  // Source: ISO 216 (A sizes in mm) and ANSI/ASME Y14.1 (inches), in points of 1/72 in
  // (ISO 32000-1, 8.3.2.3).
  struct Paper {
    const char* name;
    double width_mm, height_mm, width_pt, height_pt;
  };
  const std::vector<Paper> papers = {
      {"A4", 210, 297, 595.2756, 841.8898},    {"A3", 297, 420, 841.8898, 1190.5512},
      {"A2", 420, 594, 1190.5512, 1683.7795},  {"A1", 594, 841, 1683.7795, 2383.9370},
      {"A0", 841, 1189, 2383.9370, 3370.3937}, {"letter", 215.9, 279.4, 612, 792},
      {"tabloid", 279.4, 431.8, 792, 1224},    {"longest", 5080, 300, 14400, 850.3937}};
  std::vector<Page> pages;
  for (const Paper& paper : papers) pages.push_back({paper.width_mm, paper.height_mm, {}, ""});
  const TemporaryFolder folder;
  const std::string file = folder.write("s.pdf", to_pdf(sheet_of(pages), test::label_font()));
  const std::string info = test::run("pdfinfo -box -f 1 -l 99 " + file);
  std::size_t at = 0;
  for (const Paper& paper : papers) {
    CAPTURE(paper.name);
    at = info.find("MediaBox:", at);
    REQUIRE(at != std::string::npos);
    at += 9;
    double box[4];
    for (double& side : box) {
      std::size_t read = 0;
      side = std::stod(info.substr(at), &read);
      at += read;
    }
    CHECK(box[0] == 0);
    CHECK(box[1] == 0);
    CHECK(std::abs(box[2] - paper.width_pt) < 0.0051);  // pdfinfo prints two places
    CHECK(std::abs(box[3] - paper.height_pt) < 0.0051);
  }
}

TEST_CASE("to_pdf (2): 100 mm on the page measure 100 mm when rastered") {
  Page page{210, 297, {}, ""};
  page.drawing.line(LineKind::Cut, {50, 30}, {50, 130});
  page.drawing.line(LineKind::Cut, {150, 30}, {150, 130});
  page.drawing.line(LineKind::Thin, {100, 30}, {120, 30});
  page.drawing.line(LineKind::Thin, {100, 130}, {120, 130});
  // 100 mm at 600 dots an inch are 2362.2 dots.
  const test::Picture picture = test::raster(pdf_of(page), 1, 600);
  const auto dot = [&](double mm) { return static_cast<int>(mm * picture.dots_per_mm); };
  const DarkRun across = dark_run(picture, dot(297 - 80));
  const double width = 0.7 * picture.dots_per_mm;
  CHECK(std::abs(across.last - across.first + 1 - width - 2362.2) < 2);  // within 0.1 %
  int top = -1, bottom = -1;
  for (int y = 0; y < picture.height; ++y)
    if (picture.is_dark(dot(110), y, 200)) {
      if (top < 0) top = y;
      bottom = y;
    }
  CHECK(std::abs(bottom - top + 1 - 0.18 * picture.dots_per_mm - 2362.2) < 2);
  // And it stands where it should: 50 mm from the left, 30 mm from the bottom.
  CHECK(std::abs(across.first + 0.5 * width - 50 * picture.dots_per_mm) < 1.5);
  CHECK(std::abs(picture.height - bottom - 30 * picture.dots_per_mm) < 4);
}

TEST_CASE("to_pdf: arcs are arcs") {
  Page page{120, 120, {}, ""};
  page.drawing.line(LineKind::Numeral, plane::circle({60, 60}, 50));
  const test::Picture picture = test::raster(pdf_of(page), 1, 600);
  int seen = 0;
  double worst = 0;
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x)
      if (picture.is_dark(x, y)) {
        ++seen;
        const double dx = (x + 0.5) / picture.dots_per_mm - 60;
        const double dy = 120 - (y + 0.5) / picture.dots_per_mm - 60;
        worst = std::max(worst, std::abs(std::hypot(dx, dy) - 50));
      }
  CHECK(worst < 0.125 + 0.05);  // half the line's width and a dot
  const double ink = 2 * std::numbers::pi * 50 * 0.25 * std::pow(picture.dots_per_mm, 2);
  CHECK(seen == doctest::Approx(ink).epsilon(0.1));  // the whole way round
}

TEST_CASE("to_pdf: words can be found, whatever their turn, anchor and size") {
  Page page{210, 297, {}, ""};
  page.drawing.text({30, 250}, "LONG GRAIN 32 1/4 in", 3.5);
  page.drawing.text({105, 200}, "corner front / left", 5, draw::Anchor::Middle);
  page.drawing.text({190, 150}, "print at 100 %, no fit to page", 2.5, draw::Anchor::Right);
  page.drawing.text({20, 40}, "measure me", 3.5, draw::Anchor::Left, std::numbers::pi / 2);
  page.drawing.text({30, 20}, "AVATAR To WAVE \u00d7 fi", 4);
  const TemporaryFolder folder;
  const std::string file = folder.write("sheet.pdf", pdf_of(page));
  const std::string words = test::run("pdftotext -layout " + file + " -");
  for (const char* expected :
       {"LONG GRAIN 32 1/4 in", "corner front / left", "print at 100 %, no fit to page",
        "measure me", "AVATAR To WAVE \u00d7 fi"}) {
    CAPTURE(words);
    CHECK_MESSAGE(words.find(expected) != std::string::npos, expected);
  }
  // Shapes of our own, whole within the file: no font is looked for on the printing machine.
  const std::string fonts = test::run("pdffonts " + file);
  CHECK(fonts.find("Type 3") != std::string::npos);
  CHECK(fonts.find("TrueType") == std::string::npos);
  CHECK(fonts.find("yes no  yes") != std::string::npos);  // embedded, no subset, to Unicode
}

TEST_CASE("to_pdf: capitals have the height asked for and stand where their anchor says") {
  struct Case {
    draw::Anchor anchor;
    double left;  // of the ink, of the width
  };
  const Font font = test::label_font();
  const double width = font.text_width_mm("HHHH", 10);
  for (const Case& c :
       {Case{draw::Anchor::Left, 0.0}, {draw::Anchor::Middle, -0.5}, {draw::Anchor::Right, -1.0}}) {
    Page page{120, 60, {}, ""};
    page.drawing.text({60, 20}, "HHHH", 10, c.anchor);
    const test::Picture picture = test::raster(pdf_of(page), 1, 600);
    plane::Box ink;
    for (int y = 0; y < picture.height; ++y)
      for (int x = 0; x < picture.width; ++x)
        if (picture.is_dark(x, y)) {
          ink.cover(FlatPoint{x / picture.dots_per_mm, 60 - (y + 1) / picture.dots_per_mm});
          ink.cover(FlatPoint{(x + 1) / picture.dots_per_mm, 60 - y / picture.dots_per_mm});
        }
    CHECK(std::abs(ink.lo.y - 20) < 0.06);
    CHECK(std::abs(ink.hi.y - 30) < 0.06);
    CHECK(ink.lo.x >= 60 + c.left * width);
    CHECK(ink.hi.x <= 60 + (c.left + 1) * width);
    CHECK(ink.width() > width - 0.3 * 10);  // but for the side bearings
  }
}

TEST_CASE("to_pdf: tints under lines under text, whatever their order in the drawing") {
  Page page{60, 60, {}, ""};
  page.drawing.text({15, 25}, "HHHHHH", 10);
  page.drawing.line(LineKind::Cut, {10, 50}, {50, 50});
  page.drawing.fill(LineKind::Numeral, {0.9, 0.9, 0.9}, {plane::rectangle({5, 5}, {55, 55})});
  const test::Picture picture = test::raster(pdf_of(page), 1, 300);
  const auto gray = [&](double x, double y) {
    return picture.gray(static_cast<int>(x * picture.dots_per_mm),
                        static_cast<int>((60 - y) * picture.dots_per_mm));
  };
  CHECK(std::abs(gray(8, 8) - 229) <= 2);
  CHECK(gray(30, 50) < 20);
  int darkest = 255;
  for (double x = 15; x < 50; x += 0.1) darkest = std::min(darkest, gray(x, 30));
  CHECK(darkest < 20);
}

TEST_CASE("to_pdf (1): the same sheet gives the same bytes") {
  Page page{210, 297, {}, "A1"};
  page.drawing.line(LineKind::Fold, plane::circle({100, 100}, 50));
  page.drawing.text({30, 250}, "FOLD", 3.5);
  page.drawing.text({40, 250}, "FOLD", 3.5, draw::Anchor::Left, 1.0);
  const std::string one = pdf_of(page);
  pdf_of({100, 100, {}, ""});  // what was drawn between does not show
  CHECK(pdf_of(page) == one);
}

TEST_CASE("to_pdf: a page Cairo refuses is a fault of the machine, thrown") {
  Page page{10, 10, {}, ""};
  page.drawing.text({5, 5}, "\xff\xfe", 3.5);  // no UTF-8
  CHECK_THROWS_AS(pdf_of(page), std::runtime_error);
}

TEST_CASE("to_png: the size asked for, and ink where it should be") {
  Page page{60, 40, {}, ""};
  page.drawing.line(LineKind::Cut, {10, 10}, {50, 10});
  page.drawing.text({10, 20}, "HHHH", 5);
  const TemporaryFolder folder;
  const std::string png = to_png(page, test::label_font(), 10);
  CHECK(png.substr(1, 3) == "PNG");
  // Width and height are big-endian at bytes 16 and 20 (ISO/IEC 15948, 11.2.2).
  const auto number = [&](std::size_t at) {
    unsigned value = 0;
    for (std::size_t k = 0; k < 4; ++k)
      value = 256 * value + static_cast<unsigned char>(png[at + k]);
    return value;
  };
  CHECK(number(16) == 600);
  CHECK(number(20) == 400);
}
