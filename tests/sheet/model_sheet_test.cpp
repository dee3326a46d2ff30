#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"
#include "swathe/sheet.hpp"

namespace swathe {
namespace {

TEST_CASE("model sheet (1): the outline is the cover's, at scale") {
  const Font face = test::label_font();
  const Made made = test::made_by_hand(test::demo_job());
  for (const double scale : {1.0 / 4, 1.0 / 7, 0.1}) {
    const Sheet sheet = model_sheet(made, 0, scale, made.job.paper, face);
    REQUIRE(sheet.pages.size() == 1);
    double largest = 0;
    for (const draw::Mark& mark : sheet.pages.front().drawing.marks()) {
      const auto* const line = std::get_if<LineMark>(&mark);
      CHECK_FALSE((line && line->kind == LineKind::Staple));
      if (line && line->kind == LineKind::Cut && line->path.closed) {
        plane::Polygon outline;
        for (const plane::Vertex& v : line->path.vertices) outline.push_back(v.at);
        largest = std::max(largest, std::abs(area(outline)));
      }
    }
    CHECK(largest == doctest::Approx(scale * scale * area(made.patterns[0].outline)).epsilon(1e-9));
  }
}

TEST_CASE("model sheet: on the job's paper where that holds it, else on the next of its series") {
  const Font face = test::label_font();
  Job job = test::demo_job();
  const Made american = test::made_by_hand(job);
  CHECK(model_sheet(american, 0, 1.0 / 10, american.job.paper, face).paper == "letter");
  const Sheet large = model_sheet(american, 0, 1.0 / 4, american.job.paper, face);
  CHECK(large.paper == "arch-c");  // a cover of 1.7 m: 430 mm of card, more than 17 in less margins
  job.paper.sheet = "a4";
  job.paper.width = mm(210);
  job.paper.height = mm(297);
  CHECK(model_sheet(test::made_by_hand(job), 0, 1.0 / 4, job.paper, face).paper ==
        "a2");  // ISO 216
  CHECK(model_sheet(american, 0, 1.0, american.job.paper, face).pages.empty());
}

TEST_CASE("model sheet: words are as large as on any sheet and lie over nothing") {
  const Font face = test::label_font();
  for (const double scale : {1.0 / 4, 1.0 / 8, 1.0 / 10}) {
    const Made made = test::made_by_hand(test::demo_job());
    const Sheet sheet = model_sheet(made, 0, scale, made.job.paper, face);
    REQUIRE(sheet.pages.size() == 1);
    const Page& page = sheet.pages.front();
    for (const std::string& fault : test::text_faults(page, face)) CHECK_MESSAGE(false, fault);
    for (const std::string& fault : test::lines_through_text(page, face))
      CHECK_MESSAGE(false, fault);
    for (const TextMark& text : test::texts_of(page.drawing)) CHECK(text.height_mm >= 2.5);
    CHECK(test::says(page.drawing, "BUMPER A"));
  }
}

TEST_CASE("scale_words: a fraction of one, else decimals") {
  CHECK(scale_words(0.25) == "1/4");
  CHECK(scale_words(1.0 / 7) == "1/7");
  CHECK(scale_words(0.3) == "0.3");
}

}  // namespace
}  // namespace swathe
