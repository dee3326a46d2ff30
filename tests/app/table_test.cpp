#include "app/table.hpp"

#include <doctest/doctest.h>

#include <sstream>
#include <string>

using namespace swathe::app;

namespace {

std::size_t widest_line(const std::string& text) {
  std::istringstream lines(text);
  std::size_t widest = 0;
  for (std::string line; std::getline(lines, line);) widest = std::max(widest, columns_of(line));
  return widest;
}

}  // namespace

TEST_CASE("table: columns stand under their headings, numbers to the right") {
  Table table({{"side"}, {"length", Column::Align::Right}, {"cut"}});
  table.add({"front", "14 9/16", "laps"});
  table.add({"left", "9", ""});
  CHECK(table.to_text() ==
        "side    length  cut\n"
        "front  14 9/16  laps\n"
        "left         9\n");
  CHECK(table.to_text(2).starts_with("  side"));
}

TEST_CASE("table: the widest column that wraps gives way") {
  Table table(
      {{"rule"}, {"what", Column::Align::Left, true}, {"found", Column::Align::Left, true}});
  table.add({"R1", "padding beyond boards and bolt heads, out to the front", "short"});
  const std::string text = table.to_text(0, 30);
  CHECK(widest_line(text) <= 30);
  CHECK(text ==
        "rule  what               found\n"
        "R1    padding beyond     short\n"
        "      boards and bolt\n"
        "      heads, out to the\n"
        "      front\n");
}

TEST_CASE("table: notes stand under their column") {
  Table table({{"verdict"}, {"what"}});
  table.add({"FAIL", "height"});
  table.add_note("make the numerals taller", 1);
  CHECK(table.to_text(0, 25) ==
        "verdict  what\n"
        "FAIL     height\n"
        "         make the\n"
        "         numerals taller\n");
}

TEST_CASE("table: color does not move a column") {
  Table table({{"verdict"}, {"what"}});
  table.add({"\x1b[32mpass\x1b[0m", "height"});
  CHECK(table.to_text() == "verdict  what\n\x1b[32mpass\x1b[0m     height\n");
}
