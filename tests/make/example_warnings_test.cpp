#include <doctest/doctest.h>

#include <map>
#include <string>
#include <vector>

#include "support/made_examples.hpp"

// The examples meet the tool's own advice: what is left are warnings that nobody can avoid, and
// those that an example is there to show.
namespace swathe {

TEST_CASE("examples: which warnings are left, and nothing fails") {
  const std::map<std::string, std::vector<std::string>> left = {
      // Beside the opening there is room for no number, in any of the fonts.
      {"opening.toml", {"numeral-places"}},
      // A mast hides part of a number: that is what it shows.
      {"blind-boxes.toml", {"numeral-places", "numeral-spacing", "sight"}},
  };
  for (const auto& path : test::example_jobs()) {
    const std::string name = path.filename().string();
    CAPTURE(name);
    std::vector<std::string> warned;
    for (const Finding& finding : test::made_example(path).findings) {
      CHECK_MESSAGE(finding.verdict != Verdict::Fail, finding.id);
      if (finding.verdict == Verdict::Warn) warned.push_back(finding.id);
    }
    const auto expected = left.find(name);
    CHECK(warned == (expected == left.end() ? std::vector<std::string>() : expected->second));
  }
}

}  // namespace swathe
