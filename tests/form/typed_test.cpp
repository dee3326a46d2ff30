#include <doctest/doctest.h>

#include <string>

#include "support/examples.hpp"
#include "swathe/form.hpp"
#include "swathe/job.hpp"

// What was typed into a field, by hand: an inch is 25.4 mm exactly (NIST SP 811, appendix B).
namespace swathe {
namespace {

std::string job() { return test::bytes_of(test::example("tin-heron")); }

Typed typed(const std::string& key, std::string_view text, int steps = 0) {
  auto value = typed_value(job(), key, text, steps);
  REQUIRE_MESSAGE(value.has_value(), to_text(value.error().front()));
  return *std::move(value);
}
std::string refused(const std::string& key, std::string_view text) {
  const auto value = typed_value(job(), key, text);
  REQUIRE_FALSE(value.has_value());
  return value.error().front().sentence;
}

TEST_CASE("typed (1): lengths with any unit and with none") {
  CHECK(typed("frame.width", "28 1/2").value == "\"28 1/2 in\"");
  CHECK(typed("frame.width", "28 1/2").reads == "28 1/2 in = 723.9 mm");
  CHECK(typed("frame.width", " 70 cm ").value == "\"70 cm\"");
  CHECK(typed("frame.width", "711.2 mm").reads == "28 in = 711.2 mm");
  CHECK(typed("frame.width", "2 ft 4 in").reads == "28 in = 711.2 mm");
  CHECK(typed("frame.width", "\"28 in\"").value == "\"28 in\"");
  CHECK(typed("boards.stock", "48, 96 in").value == "[\"48 in\", \"96 in\"]");
}

TEST_CASE("typed (1): in a job in millimeters a bare number is millimeters") {
  auto text = set_value(job(), "job.units", "mm")->text;
  const auto value = typed_value(text, "cloth.flap", "50");
  REQUIRE(value.has_value());
  CHECK(value->value == "\"50 mm\"");
  CHECK(value->reads == "50 mm = 1.969 in");
  const auto more = typed_value(text, "cloth.flap", "50.5 mm", 1);
  REQUIRE(more.has_value());
  CHECK(more->value == "\"51 mm\"");
}

TEST_CASE("typed: steps go from whole step to whole step") {
  CHECK(typed("frame.width", "28", 1).value == "\"28 1/16 in\"");
  CHECK(typed("frame.width", "28", -3).value == "\"27 13/16 in\"");
  CHECK(typed("frame.width", "28.01 in", 1).value == "\"28 1/16 in\"");
  CHECK(typed("frame.width", "28.01 in", -1).value == "\"28 in\"");
  CHECK(typed("padding.stack", "2", 1).value == "3");
  CHECK(typed("sight.step", "1 deg", 1).value == "\"2 deg\"");
}

TEST_CASE("typed: names, words, lists, numbers") {
  CHECK(typed("job.title", "Spring \"A\" set").value == "\"Spring \\\"A\\\" set\"");
  CHECK(typed("job.number", "20486").value == "\"20486\"");
  CHECK(typed("boards.joint", "mitred").value == "\"mitred\"");
  CHECK(typed("boards.lapping", "front, back").value == "[\"front\", \"back\"]");
  CHECK(typed("numerals.sides", "all").value == "\"all\"");
  CHECK(typed("numerals.sides", "[\"front\"]").value == "[\"front\"]");
  CHECK(typed("frame.backed", "false").value == "false");
  CHECK(typed("cloth.density", "0,4").value == "0.4");
  CHECK(typed("numerals.color", "#ffffff").value == "\"#ffffff\"");
  CHECK(typed("cloth.colors.red", "#aa0000").value == "#aa0000");
  CHECK(typed("bumper.1.from", "[\"front\", \"9 in\", \"left\"]").value ==
        "[\"front\", \"9 in\", \"left\"]");
  CHECK(typed("paper.sheet", "A4").value == "\"A4\"");
}

TEST_CASE("typed: nothing at all takes a key out where it may be") {
  CHECK(typed("job.number", "  ").value.empty());
  CHECK(typed("cloth.longest_piece", "").value.empty());
  CHECK(refused("frame.width", "").find("missing") != std::string::npos);
}

TEST_CASE("typed (2): what reading refuses, and only of this key") {
  for (const auto& [key, text] : {std::pair{"frame.width", "wide"},
                                  {"frame.width", "1 in"},
                                  {"padding.stack", "many"},
                                  {"boards.joint", "glued"},
                                  {"bumper.1.from", "front"},
                                  {"numerals.color", "white"}}) {
    CAPTURE(key);
    const auto change = set_value(job(), key, std::string("\"") + text + "\"");
    REQUIRE(change.has_value());
    const JobReading reading = read_job(change->text, "job");
    REQUIRE_FALSE(reading.faults.empty());
    CHECK(!refused(key, text).empty());
  }
  // Another fault of the job is not this field's.
  const std::string broken = set_value(job(), "boards.height", "tall")->text;
  CHECK(typed_value(broken, "frame.width", "29").has_value());
  CHECK_FALSE(typed_value(broken, "boards.height", "high").has_value());
}

TEST_CASE("typed: no key, and a table") {
  CHECK_FALSE(typed_value(job(), "frame.girth", "1").has_value());
  CHECK_FALSE(typed_value(job(), "bumper.1", "1").has_value());
}

}  // namespace
}  // namespace swathe
