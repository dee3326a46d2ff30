#include <doctest/doctest.h>

#include <string>

#include "support/examples.hpp"
#include "support/made.hpp"

namespace swathe {
namespace {

/// The demo job with one line of a table more.
Outcome<Made> with_line(const std::string& table, const std::string& line,
                        const char* example = "/examples/kinds/c-halves.toml") {
  std::string text = test::bytes_of(std::string(SWATHE_SOURCE) + example);
  const std::string heading = "\n[" + table + "]\n";
  const auto at = text.find(heading);
  if (at == std::string::npos)
    text += heading + line + "\n";
  else
    text.insert(at + heading.size(), line + "\n");
  return test::make_text(text);
}

/// The value behind "at least", to the end or the next comma.
std::string least_of(const std::string& sentence) {
  const std::string mark = "expected at least ";
  const auto at = sentence.find(mark);
  REQUIRE_MESSAGE(at != std::string::npos, sentence);
  return sentence.substr(at + mark.size(), sentence.find(',', at) - at - mark.size());
}

}  // namespace

TEST_CASE("a roll narrower than a cover is refused, and the width that it names is taken") {
  const auto narrow = with_line("cloth", "roll_width = \"12 in\"");
  REQUIRE_FALSE(narrow.has_value());
  const Refusal& fault = narrow.error().front();
  CHECK(fault.why == Why::DoesNotFit);
  CHECK(fault.place.key == "cloth.roll_width");
  const std::string least = least_of(fault.sentence);
  CHECK(with_line("cloth", "roll_width = \"" + least + "\"").has_value());
  // A sixteenth less is not.
  const auto width = parse_length(least, Units::Inches);
  REQUIRE(width);
  const std::string less = exact(*width - inches(1.0 / 16), Units::Inches);
  CHECK_FALSE(with_line("cloth", "roll_width = \"" + less + "\"").has_value());
}

TEST_CASE("a roll on which covers fit across names that as the other way") {
  // A cover of a board 3 in long is shorter than it is wide: cloth in between takes it only across.
  const std::string job =
      "[job]\ntitle = \"Short\"\n[frame]\nwidth = \"28 in\"\ndepth = \"30 in\"\n"
      "[[bumper]]\nname = \"A\"\nfrom = [\"front\", \"5 in\", \"right\"]\nto = [\"front\", \"8 "
      "in\", \"right\"]\n"
      "[cloth]\nroll_width = \"WIDTH\"\n";
  const auto made_with = [&](const std::string& width, bool across) {
    std::string text = job;
    text.replace(text.find("WIDTH"), 5, width);
    return test::make_text(text + (across ? "may_lie_across = true\n" : ""));
  };
  const auto wide = made_with("58 in", false);
  REQUIRE_MESSAGE(wide.has_value(), to_text(wide.error().front()));
  const Pattern& pattern = wide->patterns[0];
  REQUIRE(pattern.cloth_length < pattern.cloth_width);
  const std::string between =
      measured(mm(0.5 * (pattern.cloth_length + pattern.cloth_width)), Units::Inches);
  const auto narrow = made_with(between, false);
  REQUIRE_FALSE(narrow.has_value());
  CHECK(narrow.error().front().sentence.ends_with(", or cloth.may_lie_across = true"));
  CHECK(made_with(between, true).has_value());
}

TEST_CASE("a board longer than any sheet is refused, and the sheet that it names is taken") {
  const auto small = with_line("boards", "stock = [\"24 in\", \"26 in\"]");
  REQUIRE_FALSE(small.has_value());
  const Refusal& fault = small.error().front();
  CHECK(fault.why == Why::DoesNotFit);
  CHECK(fault.place.key == "boards.stock");
  REQUIRE(fault.mend.size() == 1);
  CHECK(fault.mend[0].key == "boards.stock");
  CHECK(fault.sentence.find("expected at least " + fault.mend[0].value + ", or two bumpers") !=
        std::string::npos);
  CHECK(with_line("boards", "stock = " + fault.mend[0].value).has_value());
  // Too low for the boards, whichever way it lies: there is no place to split a bumper.
  const auto narrow = with_line("boards", "stock = [\"4 in\", \"96 in\"]");
  REQUIRE_FALSE(narrow.has_value());
  CHECK(narrow.error().front().sentence.ends_with("expected at least [\"5 in\", \"96 in\"]"));
  CHECK(with_line("boards", "stock = [\"5 in\", \"96 in\"]").has_value());
}

TEST_CASE("a bumper split where that refusal says has boards from the same sheets") {
  // A board from 1 to 25 in, less 1/4 in at each end: 23 1/2 in, from sheets of 18 in. Its middle
  // is at 13 in.
  const std::string head =
      "[job]\ntitle = \"Split\"\n[frame]\nwidth = \"28 in\"\ndepth = \"30 in\"\n"
      "[boards]\nstock = [\"12 in\", \"18 in\"]\n";
  const auto bumper = [](const std::string& name, const std::string& from, const std::string& to) {
    return "[[bumper]]\nname = \"" + name + "\"\nfrom = " + from + "\nto = " + to + "\n";
  };
  const std::string from = "[\"front\", \"1 in\", \"right\"]",
                    to = "[\"front\", \"25 in\", \"right\"]";
  const auto whole = test::make_text(head + bumper("A", from, to));
  REQUIRE_FALSE(whole.has_value());
  const std::string& sentence = whole.error().front().sentence;
  const std::string mark = "one that ends at ";
  const auto at = sentence.find(mark);
  REQUIRE_MESSAGE(at != std::string::npos, sentence);
  const std::string place =
      sentence.substr(at + mark.size(), sentence.find(", and one", at) - at - mark.size());
  CHECK(place == "[\"front\", \"13 in\", \"right\"]");
  CHECK(test::make_text(head + bumper("A", from, place) + bumper("B", place, to)).has_value());
}

TEST_CASE("padding with no place for a joint is refused, and the length that it names is taken") {
  const char* const bent = "/examples/kinds/bent.toml";
  const auto shorter = with_line("padding", "stock = \"6 in\"", bent);
  REQUIRE_FALSE(shorter.has_value());
  const Refusal& fault = shorter.error().front();
  CHECK(fault.why == Why::DoesNotFit);
  CHECK(fault.place.key == "padding.stock");
  CHECK(with_line("padding", "stock = \"" + least_of(fault.sentence) + "\"", bent).has_value());
}

}  // namespace swathe
