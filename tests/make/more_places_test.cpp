#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "support/made.hpp"
#include "swathe/rules.hpp"

// Too few places with the number: the change of keys that a finding brings, done, mends it.
namespace swathe {
namespace {

std::string job_text(const std::string& season, const std::string& numerals) {
  return fmt::format(R"([job]
number = "20486"
season = "{}"
[frame]
width = "32 in"
depth = "28 in"
[[bumper]]
name = "A"
from = ["right", "80%"]
to = ["left", "80%"]
[[bumper]]
name = "B"
from = ["left", "80%"]
to = ["right", "80%"]
[numerals]
{}
)",
                     season, numerals);
}

std::vector<Finding> on_places(const Made& made) {
  std::vector<Finding> found;
  for (const Finding& finding : made.findings)
    if (finding.id == "numeral-places" && finding.verdict != Verdict::Pass)
      found.push_back(finding);
  return found;
}

Made changed(std::string text, const std::vector<KeyChange>& mend) {
  for (const KeyChange& change : mend) {
    const auto set = set_value(text, change.key, change.value);
    REQUIRE_MESSAGE(set.has_value(), change.key);
    text = set->text;
  }
  return test::made(text);
}

TEST_CASE("a number in too few places: each change of keys mends its finding") {
  const std::string front = "[[numerals.place]]\nside = \"front\"\n";
  int counted = 0, apart = 0;
  for (const std::string& season : season_names())
    for (const std::string& numerals :
         {std::string("sides = [\"front\"]"), std::string("sides = [\"front\", \"left\"]"), front,
          front + "[[numerals.place]]\nside = \"back\"\n"}) {
      const std::string text = job_text(season, numerals);
      CAPTURE(text);
      for (const Finding& finding : on_places(test::made(text))) {
        REQUIRE_FALSE(finding.mend.empty());
        (finding.rule.empty() ? apart : counted) += 1;
        for (const Finding& left : on_places(changed(text, finding.mend)))
          CHECK(left.required != finding.required);
      }
    }
  CHECK(counted > 0);
  CHECK(apart > 0);
}

TEST_CASE("a number in too few places: no change where no other side has cloth for it") {
  // Bumpers front and back alone: what more sides there are is bare.
  const std::string text =
      "[job]\nnumber = \"20486\"\nseason = \"2023\"\n[frame]\nwidth = \"32 in\"\n"
      "depth = \"28 in\"\n[[bumper]]\nname = \"A\"\nfrom = [\"front\", \"3%\"]\n"
      "to = [\"front\", \"97%\"]\n";
  const std::vector<Finding> found = on_places(test::made(text));
  REQUIRE_FALSE(found.empty());
  for (const Finding& finding : found) CHECK(finding.mend.empty());
}

}  // namespace
}  // namespace swathe
