#include <doctest/doctest.h>

#include "swathe/job.hpp"

using namespace swathe;

namespace {

void check_size(const char* name, Length width, Length height) {
  CAPTURE(name);
  const auto paper = find_paper(name);
  REQUIRE(paper);
  CHECK(paper->width.mm() == doctest::Approx(width.mm()).epsilon(1e-12));
  CHECK(paper->height.mm() == doctest::Approx(height.mm()).epsilon(1e-12));
}

}  // namespace

// ISO 216, main sizes of the A series.
TEST_CASE("job: ISO paper") {
  check_size("a0", mm(841), mm(1189));
  check_size("a1", mm(594), mm(841));
  check_size("a2", mm(420), mm(594));
  check_size("a3", mm(297), mm(420));
  check_size("a4", mm(210), mm(297));
}

// ANSI/ASME Y14.1, sizes A and B: 8.5 by 11 and 11 by 17 in. The architects' sizes C, D and E.
TEST_CASE("job: American paper") {
  check_size("letter", mm(215.9), mm(279.4));
  check_size("tabloid", mm(279.4), mm(431.8));
  check_size("legal", inches(8.5), inches(14));  // common practice, no source
  check_size("arch-c", inches(18), inches(24));
  check_size("arch-d", inches(24), inches(36));
  check_size("arch-e", inches(36), inches(48));
  CHECK(papers().size() == 11);
  CHECK(!find_paper("a5"));
}

// Common practice, no source.
TEST_CASE("job: what an office prints on") {
  CHECK(office_paper(Units::Inches).name == "letter");
  CHECK(office_paper(Units::Millimeters).name == "a4");
  CHECK(office_paper(Units::Millimeters).width == mm(210));
}

TEST_CASE("job: the default sheet has the size of its name") {
  const PaperKeys keys;
  const auto paper = find_paper(keys.sheet);
  REQUIRE(paper);
  CHECK(paper->width == keys.width);
  CHECK(paper->height == keys.height);
}
