#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "sheet/pattern_sheet.hpp"
#include "support/commands.hpp"
#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"
#include "support/tiles_together.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"
#include "tile/tile_on_paper.hpp"

// Whole covers on the papers people have.
namespace swathe {
namespace {

Made made_on(const char* paper, double width_mm, double height_mm) {
  Job job = test::demo_job();
  job.paper.sheet = paper;
  job.paper.width = mm(width_mm);
  job.paper.height = mm(height_mm);
  return test::made_by_hand(job);
}

Sheet tiles_of(const Made& made, std::size_t bumper, const Font& face) {
  return tile_on_paper(pattern_piece(made, bumper, face), made.job.paper, face,
                       {"A-tiles", made.job.title, "cut 1 red, 1 blue", "INSIDE UP", ""});
}

/// How long what a tile shows of the cover is, as lines.
double own_length(const Page& page) {
  double sum = 0;
  for (const draw::Mark& mark : page.drawing.marks())
    if (const auto* const line = std::get_if<LineMark>(&mark); line && test::is_pages_own(*line))
      sum += length(line->path);
  return sum;
}

TEST_CASE("tiled covers: put together by their marks they are the single page") {
  const Font face = test::label_font();
  const Made made = made_on("letter", 215.9, 279.4);
  test::check_together(pattern_piece(made, 0, face), tiles_of(made, 0, face), face, 80);
}

TEST_CASE("tiled covers: no sheet is blank or holds a mere sliver of a line") {
  const Font face = test::label_font();
  // ISO 216 and ANSI/ASME Y14.1.
  const double sizes[][2] = {{215.9, 279.4}, {210, 297}, {297, 420}, {279.4, 431.8}};
  test::for_drawn_cases("slivers", 12, [&](std::mt19937_64& rng) {
    Job job = test::demo_job();
    job.frame = test::rectangle_frame(test::drawn(rng, 450, 1100), test::drawn(rng, 450, 1100));
    job.padding.diameter = mm(test::drawn(rng, 50, 70));
    job.brackets.clear();
    job.number.clear();
    const auto& size = sizes[rng() % 4];
    job.paper.width = mm(size[0]);
    job.paper.height = mm(size[1]);
    const Sheet sheet = tiles_of(test::made_by_hand(job), 0, face);
    for (const Page& page : sheet.pages) {
      CAPTURE(page.name);
      CHECK(own_length(page) >= 10);  // mm
    }
  });
}

TEST_CASE("tiled covers: every tile has its number in the order of gluing, and one has the plan") {
  const Font face = test::label_font();
  for (const char* paper : {"letter", "tabloid"}) {
    const std::optional<Paper> size = find_paper(paper);
    REQUIRE(size);
    const Sheet sheet = tiles_of(made_on(paper, size->width.mm(), size->height.mm()), 0, face);
    std::vector<bool> told(sheet.pages.size());
    std::size_t lists = 0;
    for (const Page& page : sheet.pages) {
      std::size_t numbers = 0;
      // Pages lie in that order, so that a heap of them is glued from the top.
      CHECK(page.name == std::to_string(&page - sheet.pages.data() + 1));
      for (const TextMark& text : test::texts_of(page.drawing)) {
        if (text.text == "tile " + page.name + " of " + std::to_string(sheet.pages.size()))
          told.at(std::stoul(page.name) - 1) = true;
        numbers += text.text.find_first_not_of("0123456789") == std::string::npos &&
                   std::stoul(text.text) <= sheet.pages.size();
      }
      CHECK(test::says(page.drawing, "you are here"));
      // In the page map all but this tile's, or in the plan all of them; staples have numbers too.
      lists += numbers + 1 >= sheet.pages.size();
    }
    CHECK(std::ranges::count(told, true) == static_cast<std::ptrdiff_t>(told.size()));
    CHECK(lists >= 1);
  }
}

TEST_CASE(
    "tiled covers: what their marks mean, how they are glued and how large they are is told") {
  const Font face = test::label_font();
  const Made made = made_on("letter", 215.9, 279.4);
  const Sheet sheet = tile_on_paper(pattern_piece(made, 0, face), made.job.paper, face,
                                    {"A-tiles", "Tin Heron", "", "", "", "81 in by 14 in"});
  for (const char* words : {"81 in by 14 in", "Trim each at the dots", "TRIM, cut the paper here",
                            "JOIN, lay the next tile here", "CUT", "FOLD, the way"}) {
    const auto told = std::ranges::count_if(
        sheet.pages, [&](const Page& page) { return test::says(page.drawing, words); });
    CHECK_MESSAGE(told == 1, std::string(words));
  }
  // Solid triangles are match marks alone; the line that paper is trimmed at is no line of the
  // cover.
  for (const Page& page : sheet.pages)
    for (const draw::Mark& mark : page.drawing.marks())
      if (const auto* fill = std::get_if<FillMark>(&mark); fill && fill->kind == LineKind::Join)
        CHECK((fill->color.red > 0.5 || fill->outlines.size() == 2));  // gray strips; hollow ones
  CHECK(style_of(LineKind::Trim).dashes_mm != style_of(LineKind::Cut).dashes_mm);
}

TEST_CASE("tiled covers: words that stand one below the other stay together on a tile") {
  const Font face = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    for (std::size_t bumper = 0; bumper < made.patterns.size(); ++bumper)
      for (const Page& page : tiles_of(made, bumper, face).pages) {
        const std::vector<TextMark> texts = test::texts_of(page.drawing);
        for (const TextMark& side : texts)
          if (side.text.ends_with(" side"))  // below "BUMPER A", above "INSIDE UP"
            CHECK_MESSAGE(std::ranges::count(texts, side.at.x,
                                             [](const TextMark& text) { return text.at.x; }) >= 3,
                          side.text);
      }
  }
}

TEST_CASE("tiled covers: no row of tiles joins along an edge that is cut") {
  const Font face = test::label_font();
  for (const char* paper : {"letter", "a4", "tabloid", "a3"}) {
    CAPTURE(paper);
    const std::optional<Paper> size = find_paper(paper);
    const Sheet sheet = tiles_of(made_on(paper, size->width.mm(), size->height.mm()), 0, face);
    for (const Page& page : sheet.pages) {
      std::vector<plane::Box> joins, cuts;
      for (const draw::Mark& mark : page.drawing.marks()) {
        const auto* const line = std::get_if<LineMark>(&mark);
        if (!line || line->sample || line->path.closed) continue;
        if (line->kind == LineKind::Join) joins.push_back(bounds(line->path));
        if (line->kind != LineKind::Cut) continue;
        const auto& v = line->path.vertices;
        for (std::size_t k = 0; k + 1 < v.size(); ++k) {
          plane::Box edge;
          edge.cover(v[k].at);
          edge.cover(v[k + 1].at);
          if (edge.width() + edge.height() > 20) cuts.push_back(edge);
        }
      }
      for (const plane::Box& join : joins)
        for (const plane::Box& cut : cuts) {
          const bool level = join.height() < 1 && cut.height() < 0.1;
          const bool upright = join.width() < 1 && cut.width() < 0.1;
          if (level) CHECK(std::abs(join.lo.y - cut.lo.y) > 1.5);
          if (upright) CHECK(std::abs(join.lo.x - cut.lo.x) > 1.5);
        }
    }
  }
}

/// Both edges of the first page, the shorter first, in points of 1/72 in, by poppler's pdfinfo.
std::pair<double, double> pdf_size(const Sheet& sheet, const Font& face) {
  const test::TemporaryFolder folder;
  const std::string words = test::run("pdfinfo " + folder.write("a.pdf", to_pdf(sheet, face)));
  const std::size_t at = words.find("Page size:");
  REQUIRE(at != std::string::npos);
  const std::string size = words.substr(at + 10);
  const double width = std::stod(size), height = std::stod(size.substr(size.find('x') + 1));
  return {std::min(width, height), std::max(width, height)};
}

TEST_CASE("tiled covers: on every sheet of the papers, at its standard's size") {
  struct Standard {
    const char* name;
    double width, height, unit;  ///< unit in mm
  };
  constexpr double kInch = 25.4;
  const Standard standards[] = {
      // ISO 216, main sizes of the A series
      {"a0", 841, 1189, 1},
      {"a1", 594, 841, 1},
      {"a2", 420, 594, 1},
      {"a3", 297, 420, 1},
      {"a4", 210, 297, 1},
      // ANSI/ASME Y14.1, sizes A and B
      {"letter", 8.5, 11, kInch},
      {"tabloid", 11, 17, kInch},
      // the architects' sizes C, D and E
      {"arch-c", 18, 24, kInch},
      {"arch-d", 24, 36, kInch},
      {"arch-e", 36, 48, kInch},
      // common practice, no source
      {"legal", 8.5, 14, kInch},
      // any other
      {"own size", 333.3, 222.2, 1},
  };
  const Font face = test::label_font();
  for (const Standard& standard : standards) {
    CAPTURE(standard.name);
    const auto known = find_paper(standard.name);
    const double width = standard.width * standard.unit, height = standard.height * standard.unit;
    CHECK(known.has_value() == (std::string(standard.name) != "own size"));
    const Made made = made_on(standard.name, known ? known->width.mm() : width,
                              known ? known->height.mm() : height);
    const Sheet sheet = tiles_of(made, 0, face);
    REQUIRE(!sheet.pages.empty());
    const auto [shorter, longer] = pdf_size(sheet, face);
    CHECK(std::abs(shorter - std::min(width, height) / kInch * 72) < 0.01);
    CHECK(std::abs(longer - std::max(width, height) / kInch * 72) < 0.01);
    for (const Page& page : sheet.pages)
      for (const std::string& fault : test::text_faults(page, face)) FAIL_CHECK(fault);
  }
}

}  // namespace
}  // namespace swathe
