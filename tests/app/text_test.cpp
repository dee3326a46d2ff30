#include "app/text.hpp"

#include <doctest/doctest.h>

#include <string>

#include "support/drawn.hpp"

using namespace swathe::app;

TEST_CASE("text: a character is a column, a change of color is none") {
  CHECK(columns_of("") == 0);
  CHECK(columns_of("bumper") == 6);
  CHECK(columns_of("Stoßstange 90°") == 14);
  CHECK(columns_of("\x1b[1;31mFAIL\x1b[0m") == 4);
}

TEST_CASE("text: lines are broken at spaces, long words within") {
  CHECK(wrap("", 10) == std::vector<std::string>{""});
  CHECK(wrap("   ", 10) == std::vector<std::string>{""});
  CHECK(wrap("one two three", 7) == std::vector<std::string>{"one two", "three"});
  CHECK(wrap("one  two\nthree", 80) == std::vector<std::string>{"one two three"});
  CHECK(wrap("is 2 1/2 in", 6) == std::vector<std::string>{"is", "2 1/2", "in"});
  CHECK(wrap("2 1/2 in", 3) == std::vector<std::string>{"2 1", "/2", "in"});
  CHECK(wrap("abcdefgh ij", 3) == std::vector<std::string>{"abc", "def", "gh", "ij"});
  CHECK(wrap("ßßßß", 2) == std::vector<std::string>{"ßß", "ßß"});
}

TEST_CASE("text: no drawn text loses a letter, and no line is too long") {
  swathe::test::for_drawn_cases("wrap-text", 500, [](auto& rng) {
    std::uniform_int_distribution<int> length(0, 200), letter(0, 5);
    std::string text;
    for (int k = length(rng); k > 0; --k) text += "ab -\nc"[letter(rng)];
    const std::size_t columns = 1 + static_cast<std::size_t>(length(rng)) / 10;
    std::string letters, back;
    for (const char c : text)
      if (c != ' ' && c != '\n') letters += c;
    for (const std::string& line : wrap(text, columns)) {
      CHECK(columns_of(line) <= columns);
      for (const char c : line)
        if (c != ' ') back += c;
    }
    CHECK(back == letters);
  });
}

TEST_CASE("text: a paragraph hangs under its head") {
  CHECK(paragraph("- ", "one two", 5) == "- one\n  two\n");
  CHECK(paragraph("", "", 5) == "\n");
}

TEST_CASE("text: nothing in a job steers the terminal") {
  CHECK(printable("a\x1b[2Jb\x07\n") == "a\\x1b[2Jb\\x07\n");
  CHECK(printable("Stoßstange") == "Stoßstange");
  CHECK(printable("\u009b2J\u202e\xff\n\n") == "\\xc2\\x9b2J\\xe2\\x80\\xae\\xff\n\n");
  CHECK(named("a\nb") == "a\\x0ab");
}
