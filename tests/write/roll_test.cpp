#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "draw/text_box.hpp"
#include "job/limits.hpp"
#include "support/jobs.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

Job on_roll(Length width) {
  Job job = test::demo_job();
  job.paper.sheet = kRoll;
  job.paper.width = width;
  job.paper.height = kPaperSize.most;
  return job;
}

/// The box of everything on a page.
plane::Box ink_of(const Page& page, const Font& font) {
  plane::Box box;
  for (const draw::Mark& mark : page.drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark)) box.cover(bounds(line->path));
    if (const auto* const text = std::get_if<TextMark>(&mark))
      for (const FlatPoint p : box_of(*text, font).corners()) box.cover(p);
  }
  return box;
}

TEST_CASE("roll: pages as wide as the roll and as long as they need to be") {
  const Font font = test::label_font();
  const Job job = on_roll(inches(36));
  const Made made = test::made_by_hand(job);
  for (const Sheet& sheet : all_sheets(made, font)) {
    CAPTURE(sheet.stem);
    if (sheet.kind == SheetKind::Start || sheet.kind == SheetKind::Measures ||
        sheet.kind == SheetKind::Book) {
      CHECK(sheet.paper == "letter");  // to be read, not cut from
      continue;
    }
    if (sheet.kind == SheetKind::Pattern) continue;
    CHECK(sheet.paper == "roll");
    // With the digits come those of their stroke, with the placing strips that of their tables.
    const bool two = sheet.kind == SheetKind::Numerals || sheet.kind == SheetKind::Placing;
    CHECK(sheet.pages.size() == (two ? 2 : 1));
    for (const Page& page : sheet.pages) {
      const double roll = inches(36).mm();
      const bool turned = std::abs(page.width_mm - roll) > 1e-6;
      CHECK((turned ? page.height_mm : page.width_mm) == doctest::Approx(roll));
      const plane::Box ink = ink_of(page, font), paper{{0, 0}, {page.width_mm, page.height_mm}};
      CHECK(paper.grown(1e-6).holds(ink));
      if (sheet.kind == SheetKind::Tiles && sheet.stem.front() == 'A')  // as long as the cloth
        CHECK(std::max(page.width_mm, page.height_mm) < made.patterns[0].cloth_length +
                                                            2 * job.paper.margin.mm() +
                                                            job.paper.overlap.mm() + 3);
      // No blank paper is pulled off: no more than the margins are left white along the roll.
      const double margin = job.paper.margin.mm();
      CHECK((turned ? page.width_mm - ink.width() : page.height_mm - ink.height()) <
            2 * margin + 8);
      for (const std::string& fault : test::text_faults(page, font)) CHECK_MESSAGE(false, fault);
    }
  }
}

TEST_CASE("roll: a cover wider than it comes in strips, and no page is longer than a PDF's") {
  const Font font = test::label_font();
  Job job = on_roll(inches(11));
  job.frame = test::rectangle_frame(700, 9000);
  job.bumpers = {test::half("A", "front", "back")};
  job.brackets.clear();
  job.number.clear();
  for (const Sheet& sheet : all_sheets(test::made_by_hand(job), font)) {
    if (sheet.kind == SheetKind::Tiles) CHECK(sheet.pages.size() > 2);
    if (sheet.kind == SheetKind::Pattern) continue;
    for (const Page& page : sheet.pages) {
      // Source: ISO 32000-1, annex C.2: 14 400 units of 1/72 in.
      CHECK(page.width_mm <= 14400 / 72.0 * 25.4 + 1e-6);
      CHECK(page.height_mm <= 14400 / 72.0 * 25.4 + 1e-6);
    }
  }
}

}  // namespace
}  // namespace swathe
