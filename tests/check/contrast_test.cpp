#include <doctest/doctest.h>

#include "support/checked.hpp"
#include "support/jobs.hpp"

namespace swathe {
namespace {

Color hex(const char* text) { return parse_color(text).value(); }

}  // namespace

// W3C, Web Content Accessibility Guidelines 2.2: contrast ratio and relative luminance. The digits
// are those of two independent libraries that follow it (npm wcag-contrast 3.0.0, chroma-js 2.4.0);
// a published table rounds them to 21, 4, 8.6, 1.4, 5.25, 2.44.
TEST_CASE("contrast ratios are those of the web guidelines") {
  const auto is = [](const char* a, const char* b, double ratio) {
    CAPTURE(a);
    CAPTURE(b);
    CHECK(contrast_ratio(hex(a), hex(b)) == doctest::Approx(ratio).epsilon(2e-5));
    CHECK(contrast_ratio(hex(b), hex(a)) == doctest::Approx(ratio).epsilon(2e-5));
  };
  is("#ffffff", "#000000", 21.0);
  is("#ffffff", "#ff0000", 3.9985);
  is("#ffffff", "#0000ff", 8.5925);
  is("#ffffff", "#00ff00", 1.3722);
  is("#ffffff", "#ffff00", 1.0738);
  is("#ffffff", "#00ffff", 1.2539);
  is("#ffffff", "#ff00ff", 3.1362);
  is("#000000", "#ff0000", 5.2520);
  is("#000000", "#0000ff", 2.4440);
  is("#000000", "#ffff00", 19.5560);
  is("#ff0000", "#0000ff", 2.1489);
  is("#ffffff", "#777777", 4.4781);
  is("#ffffff", "#767676", 4.5422);
  is("#ffffff", "#cc0000", 5.8865);
  is("#ffffff", "#c00000", 6.4789);
}

// Success criterion 1.4.3 asks 3:1 of large text.
TEST_CASE("a numeral is warned of below 3:1 on its cloth, under no rule") {
  Job job = test::c_halves(711.2, 762);
  job.number = "20486";
  job.cloth.colors = {{"pale", hex("#ff00ff")}, {"paler", hex("#00ffff")}};
  const auto found = test::of(test::made(job).by(nullptr), "contrast");
  REQUIRE(found.size() == 2);
  CHECK(found[0].subject == "numerals on paler");
  CHECK(found[0].verdict == Verdict::Warn);
  CHECK(found[0].measured == "1.25:1");
  CHECK(found[0].rule.empty());
  CHECK(found[1].verdict == Verdict::Pass);
  CHECK(found[1].advice.empty());
}

}  // namespace swathe
