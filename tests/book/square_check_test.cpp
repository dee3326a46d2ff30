#include "book/square_check.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "book/book_sheet.hpp"
#include "book/steps.hpp"
#include "support/label_font.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"

// Lengths across joined boards, by hand: by Pythagoras where corners are square, else by the law of
// cosines (Euclid, Elements, II.12). Frames have 1/16 in of play, ends stand back 1/4 in.
namespace swathe {
namespace {

constexpr double kInch = 25.4;

Made example(const std::string& name) { return test::made_example(test::example(name)); }

std::vector<double> inches_across(const Made& made, std::size_t bumper) {
  std::vector<double> lengths;
  for (const AcrossBoards& one : across_boards(made, bumper))
    lengths.push_back(one.length_mm / kInch);
  return lengths;
}

}  // namespace

TEST_CASE("square check: both diagonals of a bumper with two corners") {
  const Made made = example("tin-heron");
  // Half of 28 1/8 in less 1/4 in: 13 13/16 in; a side of 30 1/8 in:
  // the root of 190.785 + 907.516 = 1098.301 is 33.1406.
  for (const std::size_t bumper : {0u, 1u}) {
    const std::vector<double> across = inches_across(made, bumper);
    REQUIRE(across.size() == 2);
    CHECK(across[0] == doctest::Approx(33.1406).epsilon(1e-5));
    CHECK(across[1] == doctest::Approx(33.1406).epsilon(1e-5));
  }
  const AcrossBoards first = across_boards(made, 0).front();
  CHECK(first.from == "end on front");
  CHECK(first.to == "corner left / back");
}

TEST_CASE("square check: between the ends of a bumper with one corner") {
  // 13 13/16 in, and half of 30 1/8 in less 1/4 in, 14 13/16 in: the root of 190.785 + 219.410
  // = 410.195 is 20.2533.
  const std::vector<double> across = inches_across(example("kinds/corner-pieces"), 0);
  REQUIRE(across.size() == 1);
  CHECK(across[0] == doctest::Approx(20.2533).epsilon(1e-5));
}

TEST_CASE("square check: corners that are not square") {
  // A side of 16 in with its play: 16 + 2 (1/16) tan 30 deg = 16.0722 in. From corner to the next
  // but one: 16.0722 times the root of 3, 27.8378. From an end, 8.0361 - 0.25 = 7.7861 in before a
  // corner of 120 deg: the root of 60.623 + 258.314 + 125.139 = 444.077 is 21.0731.
  const std::vector<double> across = inches_across(example("kinds/hexagon"), 0);
  REQUIRE(across.size() == 3);
  CHECK(across[0] == doctest::Approx(21.0731).epsilon(1e-4));
  CHECK(across[1] == doctest::Approx(27.8378).epsilon(1e-4));
  CHECK(across[2] == doctest::Approx(21.0731).epsilon(1e-4));
}

TEST_CASE("square check: the book lists it, the order of work asks for it; not of straight ones") {
  const auto asked = [](const Made& made) {
    return std::ranges::any_of(steps_of(made), [](const WorkStep& step) {
      return std::ranges::count(step.needs, "list of lengths across") > 0 &&
             step.what.find("before the glue sets") != std::string::npos;
    });
  };
  const auto listed = [](const Made& made) {
    const Sheet book = book_sheet(made, made.job.paper, test::label_font());
    return std::ranges::any_of(book.pages, [](const Page& page) {
      return test::says(page.drawing, "Lengths across") && test::says(page.drawing, "33 1/8");
    });
  };
  CHECK(asked(example("tin-heron")));
  CHECK(listed(example("tin-heron")));
  CHECK_FALSE(asked(example("kinds/one-a-side")));
  CHECK_FALSE(listed(example("kinds/one-a-side")));
}

}  // namespace swathe
