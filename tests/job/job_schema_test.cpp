#include "job/job_schema.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <regex>
#include <string>

#include "support/drawn.hpp"
#include "swathe/base.hpp"

using namespace swathe;
using namespace swathe::test;

namespace {

/// Words that lengths and angles are made of, in any order.
std::string drawn_words(std::mt19937_64& rng) {
  static constexpr std::string_view kWords[] = {
      "1",      "32", ".5",           "2.",           "1/4",      "-",  " ",  "\t", "in",  "inch",
      "ft",     "'",  "\"",           "yd",           "yards",    "mm", "cm", "m",  "deg", "rad",
      "arcmin", "/",  "\xe2\x80\xb2", "\xe2\x80\xb3", "\xc2\xb0", "½",  "⅔",  "”",  "’",   "in.",
      "ft."};
  std::string text;
  for (auto words = rng() % 8; words > 0; --words) text += kWords[rng() % std::size(kWords)];
  return text;
}

}  // namespace

TEST_CASE("job schema (1): a text that is read as a length or an angle looks like one") {
  const std::regex length(length_pattern()), angle(angle_pattern());
  int lengths = 0, angles = 0;
  for_drawn_cases("schema-patterns", 20000, [&](auto& rng) {
    const std::string text = drawn_words(rng);
    CAPTURE(text);
    if (parse_length(text, Units::Inches)) {
      CHECK(std::regex_match(text, length));
      ++lengths;
    }
    if (parse_angle(text)) {
      CHECK(std::regex_match(text, angle));
      ++angles;
    }
  });
  CHECK(lengths > 100);
  CHECK(angles > 100);
}

TEST_CASE("job schema: what is no length does not look like one") {
  const std::regex length(length_pattern()), angle(angle_pattern());
  for (const char* text : {"", "5 inn", "in", "5 in 3", "five in", "5 deg", "1/4/2 in"})
    CHECK_FALSE(std::regex_match(text, length));
  for (const char* text : {"", "5 degree", "deg", "5 in"})
    CHECK_FALSE(std::regex_match(text, angle));
}

TEST_CASE("job schema: it is JSON, of the draft that editors know") {
  const auto schema = nlohmann::json::parse(job_schema());
  CHECK(schema.at("$schema") == "http://json-schema.org/draft-07/schema#");
  CHECK(schema.at("required") == nlohmann::json({"job", "frame", "bumper"}));
  CHECK(schema.at("properties").at("cloth").at("properties").at("flap").at("default") == "2 in");
}
