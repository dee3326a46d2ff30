#include "base/toml_faults.hpp"

#include <doctest/doctest.h>

#include <random>
#include <string>
#include <vector>

#include "base/toml_mend.hpp"
#include "support/drawn.hpp"

using namespace swathe;

namespace {

constexpr std::string_view kLists[] = {"bracket", "bumper"};

Refusals faults_in(std::string_view text) {
  const PlaceFinder places(text, "heron.toml");
  const auto table = parse_toml(text, places, "the job", 1 << 20, kLists);
  return table ? Refusals() : table.error();
}

/// What a message says to type; empty where it says nothing.
std::string typed(const Refusal& fault) {
  const auto at = fault.sentence.find(": type ");
  return at == std::string::npos ? "" : fault.sentence.substr(at + 7);
}

/// The text with a fault's line typed as the message says.
std::string with_line(std::string text, const Refusal& fault) {
  std::size_t start = 0;
  for (int line = 1; line < fault.place.line; ++line) start = text.find('\n', start) + 1;
  return text.replace(start, end_of_line(text, start) - start, typed(fault));
}

}  // namespace

// The lines are such as people type; what is to be typed instead, and the place of the value, are
// written by hand.
TEST_CASE("base: slips in a value are told at the value, with the line to type") {
  struct Line {
    std::string text;
    int column;
    std::string typed;
  };
  for (const Line& line :
       std::vector<Line>{{"width = 26 1/2 in", 9, "width = \"26 1/2 in\""},
                         {"width = 26 1/2 in  # of the frame", 9, "width = \"26 1/2 in\""},
                         {"width = 26½", 9, "width = \"26½\""},
                         {"width = 28in", 9, "width = \"28in\""},
                         {"width = 23/32 in", 9, "width = \"23/32 in\""},
                         {"width = 26.5\"", 9, "width = \"26.5 in\""},
                         {"width = 28 in\"", 9, "width = \"28 in\""},
                         {"width = 2' 6\"", 9, "width = \"2 ft 6 in\""},
                         {"width = \"26.5\"\"", 9, "width = \"26.5 in\""},
                         {"width = 26,5 in", 9, "width = \"26.5 in\""},
                         {"width = “28 in”", 9, "width = \"28 in\""},
                         {"width = ‘28 in’", 9, "width = \"28 in\""},
                         {"width = “26.5””", 9, "width = \"26.5 in\""},
                         {"title = “Tin Heron, spring”", 9, "title = \"Tin Heron, spring\""},
                         {"width = \"28 in", 9, "width = \"28 in\""},
                         {"width = \"28 in   # of the frame", 9, "width = \"28 in\""},
                         {"width = \"28 in”", 9, "width = \"28 in\""},
                         {"title = 'Tin Heron", 9, "title = \"Tin Heron\""},
                         {"number = 00486", 10, "number = \"00486\""},
                         {"corner = butted", 10, "corner = \"butted\""},
                         {"filled = True", 10, "filled = true"},
                         {"color = #b5121b", 9, "color = \"#b5121b\""},
                         {"stretch = .01", 11, "stretch = 0.01"},
                         {"stretch = 1.", 11, "stretch = 1"},
                         {"from = [\"front\", 50%]", 18, "from = [\"front\", \"50%\"]"},
                         {"from = [front, 50%]", 9, "from = [\"front\", \"50%\"]"},
                         {"from = [\"front, \"50%\"]", 9, "from = [\"front\", \"50%\"]"},
                         {"from = [\"front\", \"50%]", 18, "from = [\"front\", \"50%\"]"},
                         {"from = [“front”, “50%”]", 9, "from = [\"front\", \"50%\"]"},
                         {"from = [\"front\", \"50%\"", 8, "from = [\"front\", \"50%\"]"},
                         {"from = \"front\", \"50%\"", 8, "from = [\"front\", \"50%\"]"},
                         {"from = front, 50%", 8, "from = [\"front\", \"50%\"]"},
                         {"colors = { red = #b5121b }", 0, ""},
                         {"colors = { red = “#b5121b” }", 18, "colors = { red = \"#b5121b\" }"},
                         {"font = \"C:\\fonts\\heron.ttf\"", 8, "font = 'C:\\fonts\\heron.ttf'"},
                         {"width: 28 in", 1, "width = \"28 in\""},
                         {"width \"28 in\"", 1, "width = \"28 in\""}}) {
    CAPTURE(line.text);
    for (const char* end : {"", "\n", "\nnext = 1\n", "\n\n# a remark\n[next]\nkey = 1\n"}) {
      const std::string text = "first = 1\n" + line.text + end;
      const Refusals faults = faults_in(text);
      REQUIRE(faults.size() == 1);
      CAPTURE(faults[0].sentence);
      CHECK(faults[0].why == Why::Malformed);
      CHECK(faults[0].place.file == "heron.toml");
      CHECK(faults[0].sentence.find("expected") != std::string::npos);
      if (line.column == 0) continue;  // what the parser says
      CHECK(faults[0].place.line == 2);
      CHECK(faults[0].place.column == line.column);
      CHECK(typed(faults[0]) == line.typed);
      CHECK(faults_in(with_line(text, faults[0])).empty());
    }
  }
}

TEST_CASE("base: all slips of a text are told, each in its line") {
  const std::string text =
      "[frame]\nwidth = 28 in\ndepth = “30 in”\n\n[bumper]\nname = A\n\n"
      "[bumper]\nname = \"B\"\nfrom = [\n  \"front\",\n  50%,\n]\n";
  const Refusals faults = faults_in(text);
  REQUIRE(faults.size() == 6);
  const int lines[] = {2, 3, 5, 6, 8, 12};
  for (std::size_t k = 0; k < faults.size(); ++k) CHECK(faults[k].place.line == lines[k]);
  CHECK(typed(faults[2]) == "[[bumper]]");
  CHECK(faults[5].place.column == 3);
}

TEST_CASE("base: a list of tables has double brackets") {
  for (const auto& [text, line, type] : std::vector<std::tuple<std::string, int, std::string>>{
           {"[[bracket]]\na = 1\n[bracket]\na = 2\n", 3, "[[bracket]]"},
           {"[bracket]\na = 1\n[[bracket]]\na = 2\n", 1, "[[bracket]]"},
           {"[[bracket]\na = 1\n", 1, "[[bracket]]"},
           {"[bracket]]\na = 1\n", 1, "[[bracket]]"},
           {"[frame\na = 1\n", 1, "[frame]"}}) {
    CAPTURE(text);
    const Refusals faults = faults_in(text);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].place.line == line);
    CHECK(faults[0].place.column == 1);
    CHECK(typed(faults[0]) == type);
    CHECK(faults_in(with_line(text, faults[0])).empty());
  }
}

TEST_CASE("base: what is there twice, what has no value, what has a blank in its key") {
  const auto only = [](const std::string& text) {
    const Refusals faults = faults_in(text);
    REQUIRE(faults.size() == 1);
    return faults[0];
  };
  const Refusal twice = only("[frame]\nwidth = 1\n  width = 2\n");
  CHECK(twice.sentence.find("width is there for the second time") == 0);
  CHECK(twice.place.line == 3);
  CHECK(twice.place.column == 3);
  CHECK(only("[cloth]\na = 1\n[cloth]\nb = 2\n").sentence.find("[cloth] is there for the second") ==
        0);
  CHECK(only("width =\ndepth = 3\n").sentence.find("width has no value, expected one") == 0);
  CHECK(typed(only("floor gap = 3\n")) == "floor_gap = 3");
  CHECK(typed(only("floor gap = 2 in\n")) == "floor_gap = \"2 in\"");
}

TEST_CASE("base: a fault is one short line, whatever stands there") {
  const std::string many(200000, '[');
  for (const std::string& text :
       {"a = " + many, "a = [" + std::string(100000, '\n'), "[" + std::string(5000, 'a'),
        "a = [" + std::string(4000, ',') + "1 in]", std::string(3000, 'a') + " = 1 in",
        "a b" + std::string(3000, 'c') + " = 1", std::string("a = [\"\"\"x\ny\"\"\", 1 in]"),
        std::string("a = \"x\"y\nb = 1 in"), std::string("a = 1e999"),
        std::string("a = 99999999999999999999"), std::string("a = 2026-13-45")}) {
    const Refusals faults = faults_in(text);
    REQUIRE_FALSE(faults.empty());
    for (const Refusal& fault : faults) {
      CHECK(fault.sentence.find('\n') == std::string::npos);
      CHECK(fault.sentence.size() < 1000);
    }
  }
  std::string curly = "a = [";
  for (int k = 0; k < 20000; ++k) curly += "“a,";
  CHECK_FALSE(faults_in(curly).empty());  // in no time
}

TEST_CASE("base: what nobody recognizes keeps the parser's words and its place") {
  const Refusals faults = faults_in("a = 1\nb = [1, 2]]\n");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].sentence.find("this is not TOML: ") == 0);
  CHECK(faults[0].place.line == 2);
}

TEST_CASE("base: a value that is TOML has no slip, and what is mended is TOML") {
  static constexpr std::string_view kParts[] = {
      "1", "26", "1/2", " ",  " in", "\"",   "'",   "“",         "”", "’",
      "[", "]",  "{",   "}",  ",",   "#",    "a",   "=",         ".", "%",
      "½", "0",  "-",   "\n", "\\",  "true", "50%", "\"front\"", "\t"};
  int mended = 0, sound = 0;
  test::for_drawn_cases("toml-slips", 20000, [&](std::mt19937_64& rng) {
    std::string text;
    for (auto parts = rng() % 9; parts > 0; --parts) text += kParts[rng() % std::size(kParts)];
    CAPTURE(text);
    const ScannedValue value = scan_value(text, 0);
    CHECK(value.begin <= value.end);
    CHECK(value.end <= text.size());
    if (!value.mended.empty()) CHECK(is_toml_value(value.mended));
    if (value.slip != Slip::None && !value.mended.empty()) ++mended;
    if (text.find('\n') == std::string::npos && is_toml_value(text)) {
      CHECK(value.slip == Slip::None);
      ++sound;
    }
    const Refusals faults = faults_in("key = " + text);
    for (const Refusal& fault : faults) {
      CHECK(fault.why == Why::Malformed);
      CHECK(fault.sentence.find("expected") != std::string::npos);
    }
  });
  CHECK(mended > 100);
  CHECK(sound > 100);
}
