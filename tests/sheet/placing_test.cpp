#include "sheet/placing.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "sheet/pattern_drawing.hpp"
#include "sheet/placing_sheet.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

Job demo_on(const char* paper) {
  Job job = test::demo_job();
  const auto size = find_paper(paper);
  job.paper.sheet = paper;
  job.paper.width = size->width;
  job.paper.height = size->height;
  return job;
}

TEST_CASE("placings (1), (2): every number once, its digits where the pattern has them") {
  const Made made = test::made_by_hand(test::demo_job());
  const std::vector<PlacedNumeral> numbers = made.numerals_on_patterns();
  REQUIRE(!numbers.empty());
  std::size_t places = 0;
  for (const Placing& placing : placings(made))
    for (const PlacedNumeral& number : placing.places) {
      ++places;
      CHECK(number.text == placing.text);
      REQUIRE(number.digits.size() == placing.digits.size());
      for (std::size_t k = 0; k < number.digits.size(); ++k) {
        const plane::Box ink = bounds(made.numerals->outline_of(number.digits[k]));
        CHECK(number.center_s + placing.digits[k].left == doctest::Approx(ink.lo.x));
        CHECK(number.center_s + placing.digits[k].right == doctest::Approx(ink.hi.x));
      }
      // The number's ink lies as far to the left of its center line as to the right.
      CHECK(placing.left + placing.right == doctest::Approx(0).epsilon(0.01));
      CHECK(placing.right - placing.left == doctest::Approx(number.width));
    }
  CHECK(places == numbers.size());
}

/// Circles, by their middles from left to right.
std::vector<FlatPoint> pins_of(const Drawing& drawing) {
  std::vector<FlatPoint> pins;
  for (const draw::Mark& mark : drawing.marks()) {
    const auto* line = std::get_if<LineMark>(&mark);
    if (!line || line->kind != LineKind::Thin || !line->path.closed ||
        line->path.vertices.size() > 3)
      continue;
    pins.push_back(bounds(line->path).middle());
  }
  std::ranges::sort(pins, {}, [](FlatPoint p) { return p.x; });
  return pins;
}

TEST_CASE("placing strip: at full size its pins are the ends of the pattern's lines") {
  for (const PaperFace face : {PaperFace::Inside, PaperFace::Outside}) {
    Job job = demo_on("arch-e");  // large enough for one tile
    job.paper.face = face;
    const Made made = test::made_by_hand(job);
    const Sheet sheet = placing_sheet(made, made.job.paper, test::label_font());
    CHECK(sheet.stem == "placing");
    REQUIRE(sheet.pages.size() == 2);
    const Drawing& strip = sheet.pages[1].drawing;
    const std::vector<FlatPoint> pins = pins_of(strip);
    REQUIRE(placings(made).size() == 1);
    REQUIRE(pins.size() == 3);

    // The base line on the pattern: the longest level thin line through a number.
    const Drawing pattern = draw_pattern(made, 0, test::label_font(), {0, 0});
    double base_line = 0;
    for (const draw::Mark& mark : pattern.marks())
      if (const auto* line = std::get_if<LineMark>(&mark); line && line->kind == LineKind::Thin &&
                                                           !line->path.closed &&
                                                           bounds(line->path).height() < 0.01)
        base_line = std::max(base_line, bounds(line->path).width());
    CHECK(pins[2].x - pins[0].x == doctest::Approx(base_line));

    // Seen from outside, the first digit of the number is the leftmost, whichever face is printed.
    std::vector<std::pair<double, std::string>> digits;
    for (const TextMark& text : test::texts_of(strip))
      if (text.text.size() == 1 && text.height_mm == 5.0) digits.emplace_back(text.at.x, text.text);
    std::ranges::sort(digits);
    std::string read;
    for (const auto& [at, digit] : digits) read += digit;
    CHECK(read == made.job.number);
  }
}

TEST_CASE("placing sheet: base line and digits in the job's units, from cloth edge and center") {
  for (const Units units : {Units::Inches, Units::Millimeters}) {
    Job job = demo_on("letter");
    job.units = units;
    const Made made = test::made_by_hand(job);
    const Sheet sheet = placing_sheet(made, made.job.paper, test::label_font());
    const auto says = [&](const std::string& words) {
      return std::ranges::any_of(sheet.pages,
                                 [&](const Page& page) { return test::says(page.drawing, words); });
    };
    for (const PlacedNumeral& number : made.numerals_on_patterns()) {
      const plane::Box cloth =
          bounds(made.patterns[static_cast<std::size_t>(number.bumper)].outline);
      CHECK(says(dimension(mm(number.digits.front().origin.y - cloth.lo.y), units)));
      CHECK(says(dimension(mm(number.center_s - cloth.lo.x), units)));
      CHECK(says(number.side + " of "));
      const plane::Box ink = bounds(made.numerals->outline_of(number.digits.front()));
      CHECK(says(dimension(mm(number.center_s - ink.lo.x), units) + " left"));
    }
    for (const Page& page : sheet.pages)
      for (const std::string& fault : test::text_faults(page, test::label_font()))
        FAIL_CHECK(fault);
  }
}

TEST_CASE("placing sheet: a number in one sheet needs no strip; pieces stand on its edge") {
  struct Case {
    NumeralMethod method;
    StencilFor stencil_for;
    bool strip;
  };
  for (const Case& c : {Case{NumeralMethod::Stencil, StencilFor::Digit, true},
                        {NumeralMethod::Stencil, StencilFor::Number, false},
                        {NumeralMethod::PaintMask, StencilFor::Digit, false},
                        {NumeralMethod::IronOn, StencilFor::Digit, true},
                        {NumeralMethod::SewOn, StencilFor::Digit, true}}) {
    Job job = demo_on("letter");
    job.numerals.method = c.method;
    job.numerals.stencil_for = c.stencil_for;
    const Made made = test::made_by_hand(job);
    const Sheet sheet = placing_sheet(made, made.job.paper, test::label_font());
    REQUIRE(!sheet.pages.empty());
    CHECK((sheet.pages.size() > 1) == c.strip);
    CHECK(test::says(sheet.pages.front().drawing, "Push a pin through"));
  }
}

}  // namespace
}  // namespace swathe
