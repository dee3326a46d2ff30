#include "sheet/cover_ends.hpp"

#include <doctest/doctest.h>

#include "support/examples.hpp"
#include "support/made_examples.hpp"

namespace swathe {
namespace {

Made example(const std::string& kind) { return test::made_example(test::example("kinds/" + kind)); }

TEST_CASE("ends of covers are named by what they lie on or next to") {
  const Made halves = example("sewn");  // each goes on to other sides
  CHECK(cover_end_words(halves, 0, true) == "end on front");
  CHECK(cover_end_words(halves, 0, false) == "end on back");
  CHECK(cover_end_words(halves, 1, true) == "end on back");
  CHECK(cover_end_words(halves, 1, false) == "end on front");

  const Made straight = example("one-a-side");  // front, left, back, right
  CHECK(cover_end_words(straight, 0, true) == "end next to bumper D");
  CHECK(cover_end_words(straight, 0, false) == "end next to bumper B");

  const Made opening = example("opening");  // the way round, with both ends on the front
  CHECK(cover_end_words(opening, 0, true) == "end on front, by left");
  CHECK(cover_end_words(opening, 0, false) == "end on front, by right");
}

TEST_CASE("the two ends of a cover never have one name") {
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    for (std::size_t b = 0; b < made.patterns.size(); ++b)
      CHECK(cover_end_words(made, b, true) != cover_end_words(made, b, false));
  }
}

}  // namespace
}  // namespace swathe
