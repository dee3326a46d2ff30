#include <doctest/doctest.h>

#include <random>
#include <set>

#include "support/drawn.hpp"
#include "swathe/base.hpp"

using namespace swathe;

namespace {

std::vector<Subject> of_every_kind(const std::string& a, const std::string& b,
                                   const std::string& c) {
  return {Subject::frame(),       Subject::side(a),
          Subject::corner(a, b),  Subject::bumpers(),
          Subject::bumper(a),     Subject::end(a, true),
          Subject::end(a, false), Subject::bumper_corner(a, b, c),
          Subject::board(a, b),   Subject::padding_piece(a, b),
          Subject::boards(),      Subject::padding(),
          Subject::cloth(),       Subject::cloth_of(a),
          Subject::bracket(2),    Subject::numerals(),
          Subject::numeral(12),   Subject::digit('4'),
          Subject::blind(3),      Subject::rule(a)};
}

}  // namespace

TEST_CASE("subject: spelled as scripts read it") {
  CHECK(to_text(Subject::side("left")) == "side.left");
  CHECK(to_text(Subject::end("A", true)) == "bumper.A.start");
  CHECK(to_text(Subject::bumper_corner("A", "front", "left")) == "bumper.A.corner.front.left");
  CHECK(to_text(Subject::bracket(2)) == "bracket.2");
  CHECK(to_text(Subject::rule("R406")) == "rule.R406");
  CHECK(to_text(Subject::bumper("front left 1.5\"")) == "bumper.front%20left%201%2E5%22");
  CHECK(to_text(Subject::bumper("k\u00e4fig")) == "bumper.k\u00e4fig");
  CHECK(to_text(Subjects{Subject::bumper("A"), Subject::side("left")}) == "bumper.A side.left");
  CHECK(to_text(Subjects()).empty());
}

TEST_CASE("subject: whatever its names, it is read back and is no other's text (1) (2)") {
  const std::string names[] = {"A",          "start",       "corner.front", "a b",  "\"", "%41",
                               "\u96c0",     "\t\n",        "A.start",      "100%", ".",  "end",
                               "\u00a0\x7f", "board.front", "<&>'",         "-_",   " "};
  std::set<std::string> texts;
  std::size_t count = 0;
  for (const std::string& a : names)
    for (const std::string& b : names)
      for (const Subject& subject : of_every_kind(a, b, "left")) {
        const std::string text = to_text(subject);
        CAPTURE(text);
        REQUIRE(parse_subject(text) == subject);
        CHECK(text.find_first_of(" \t\n\"<&>'") == std::string::npos);
        if (texts.insert(text).second) ++count;
      }
  // Each text once for what makes it: two names, one name or none.
  const std::size_t n = std::size(names);
  CHECK(count == 3 * n * n + n * n + 6 * n + 10);
}

TEST_CASE("subject: every byte in a name") {
  for (int byte = 1; byte < 256; ++byte) {
    const std::string name(1, static_cast<char>(byte));
    CHECK(parse_subject(to_text(Subject::bumper(name))) == Subject::bumper(name));
  }
}

TEST_CASE("subject: what is none is none") {
  for (const char* text : {"",
                           ".",
                           "side",
                           "side.",
                           "side.a.b",
                           "bumper.A.",
                           "bumper..start",
                           "bumper.A.middle",
                           "bracket.0",
                           "bracket.01",
                           "bracket.-1",
                           "bracket.x",
                           "bracket.99999999999",
                           "bracket.1 ",
                           "side.a b",
                           "side.%4",
                           "side.%41",
                           "side.%zz",
                           "side.%2e",
                           "frame.x",
                           "Frame",
                           "bumper.A.corner.front"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_subject(text));
  }
}
