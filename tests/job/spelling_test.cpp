#include "job/spelling.hpp"

#include <doctest/doctest.h>

#include "job/least_job.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

TEST_CASE("spelling: keys in the British spelling are read, with their places") {
  const std::string text =
      test::kLeast +
      "[cloth]\ncolours = { red = \"#a00000\" }\n"
      "[numerals]\ncolour = \"#fff\"\n"
      "[[numerals.place]]\nbumper = \"A\"\nside = \"left\"\ncentre = [9, \"front\"]\n";
  const JobReading reading = read_job(text, "job.toml");
  REQUIRE(reading.faults.empty());
  REQUIRE(reading.job.cloth.colors.size() == 1);
  CHECK(reading.job.cloth.colors.front().name == "red");
  CHECK(reading.job.numerals.color.red == 1);
  const Place at = reading.job.places.of("numerals.color");
  CHECK(at.line == 17);
  CHECK(at.column == 10);
}

TEST_CASE("spelling: a name that the job gives stays as it is") {
  const std::string text = test::kLeast + "[cloth.colours]\ncolour = \"#a00000\"\n";
  const JobReading reading = read_job(text, "job.toml");
  REQUIRE(reading.faults.empty());
  CHECK(reading.job.cloth.colors.front().name == "colour");
}

TEST_CASE("spelling: a key in both spellings is one too many") {
  const std::string text = test::kLeast + "[numerals]\ncolor = \"#fff\"\ncolour = \"#000\"\n";
  const JobReading reading = read_job(text, "job.toml");
  REQUIRE(reading.faults.size() == 1);
  CHECK(reading.faults.front().why == Why::UnknownKey);
  CHECK(reading.faults.front().place.line == 16);
}

TEST_CASE("spelling: a text that nests deeply is read, and refused, like any other") {
  std::string text = test::kLeast + "deep = ";
  for (int k = 0; k < 200; ++k) text += "{ a = [";
  text += "1";
  for (int k = 0; k < 200; ++k) text += "] }";
  CHECK_FALSE(read_job(text + "\n", "job.toml").faults.empty());
}

}  // namespace
}  // namespace swathe
