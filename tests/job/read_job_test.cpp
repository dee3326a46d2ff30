#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "job/least_job.hpp"
#include "support/examples.hpp"
#include "swathe/bumper.hpp"
#include "swathe/job.hpp"

using namespace swathe;
using namespace swathe::test;

TEST_CASE("job: the least job is read, with every default") {
  const JobReading reading = read_job(kLeast, "dir/spring.toml");
  REQUIRE_MESSAGE(reading.faults.empty(), all_sentences(reading));
  CHECK(reading.unsound.empty());
  const Job& job = reading.job;
  CHECK(job.title == "Covers");
  CHECK(job.number == "20486");
  CHECK(job.season == season_names().front());  // the newest
  CHECK(job.source == "spring.toml");
  CHECK(job.units == Units::Inches);
  CHECK(job.boards.thickness == inches(23.0 / 32));
  CHECK(job.boards.lapping == std::vector<std::string>{"front", "back"});
  CHECK(job.padding.lapping == std::vector<std::string>{"front", "back"});
  CHECK(job.cloth.buy_step == inches(9));
  CHECK(job.cloth.fixing == Fixing::Staples);
  CHECK(job.cloth.colors[1].name == "blue");
  CHECK(job.paper.sheet == "letter");
  REQUIRE(job.bumpers.size() == 1);
  CHECK(job.bumpers[0].from.side == "front");
  CHECK(std::get<RunEnd::Share>(job.bumpers[0].to.at).fraction == 0.5);
  CHECK(!job.numerals.sides);
  CHECK(!job.numerals.height);
}

TEST_CASE("job: a rectangle's sides run front, left, back, right, counter-clockwise") {
  const Job job = read_job(kLeast, "job").job;
  CHECK(job.frame.sides == std::vector<std::string>{"front", "left", "back", "right"});
  const double w = 28 * 25.4, d = 30 * 25.4;
  REQUIRE(job.frame.corners.size() == 4);
  CHECK(job.frame.corners[0] == FlatPoint{w, d});
  CHECK(job.frame.corners[1] == FlatPoint{0, d});
  CHECK(job.frame.corners[2] == FlatPoint{0, 0});
  CHECK(job.frame.corners[3] == FlatPoint{w, 0});
  CHECK(Frame::make(job.frame, job.places).has_value());
}

TEST_CASE("job: the new job and the example are without fault") {
  const JobReading fresh = read_job(new_job_text(), "new.toml");
  CHECK_MESSAGE(fresh.faults.empty(), all_sentences(fresh));
  CHECK(fresh.job.bumpers.size() == 2);
  CHECK(fresh.job.number.empty());
  const JobReading heron = read_job(bytes_of(example("tin-heron")), "tin-heron.toml");
  CHECK_MESSAGE(heron.faults.empty(), all_sentences(heron));
  CHECK(heron.job.brackets.size() == 4);
}

TEST_CASE("job: where a bumper ends is a share, a distance from a corner, or a word") {
  const auto end = [](const std::string& at) {
    return read_job(changed(kLeast, "\"50%\"]\nto", at + "]\nto"), "job");
  };
  for (const char* three : {"\"3 in\", \"left\"", "3, \"left\""}) {
    const auto from = std::get<FromCorner>(end(three).job.bumpers[0].from.at);
    CHECK(from.distance == inches(3));
    CHECK(from.neighbor == "left");
  }
  CHECK(std::holds_alternative<RunEnd::Opening>(end("\"opening\"").job.bumpers[0].from.at));
  CHECK(std::holds_alternative<RunEnd::Corner>(end("\"corner\"").job.bumpers[0].from.at));
  CHECK(std::get<RunEnd::Share>(end("\"12.5 %\"").job.bumpers[0].from.at).fraction == 0.125);
  for (const char* wrong : {"\"101%\"", "\"-1%\"", "\"-1 in\", \"left\""})
    CHECK(end(wrong).faults[0].why == Why::OutOfRange);
  for (const char* wrong : {"\"%\"", "\"nan%\"", "\"half\""})
    CHECK(end(wrong).faults[0].why == Why::Malformed);
  CHECK(end("\"101%\"").faults[0].place.line == 11);
  CHECK(end("\"101%\"").faults[0].place.column == 18);
}

TEST_CASE("job: a frame of any corners") {
  const std::string frame = "width = \"28 in\"\ndepth = \"30 in\"\n";
  const std::string corners = "corners = [[30, 0], [15, 26], [0, 0]]\n";
  const auto with = [&](const std::string& lines) {
    std::string text = changed(kLeast, frame, lines);
    text = changed(text, "\"front\"", "\"p\"");
    return read_job(changed(text, "\"back\"", "\"q\""), "job");
  };
  const JobReading good = with(corners + "sides = [\"p\", \"q\", \"r\"]\n");
  REQUIRE_MESSAGE(good.faults.empty(), all_sentences(good));
  CHECK(good.job.frame.corners[1] == FlatPoint{15 * 25.4, 26 * 25.4});
  CHECK(good.job.boards.lapping == std::vector<std::string>{"p"});  // no two neighbors of three

  const auto faults = [&](const std::string& lines) { return with(lines).faults; };
  const auto missing = faults(corners);
  REQUIRE(missing.size() == 1);
  CHECK(missing[0].why == Why::Missing);
  CHECK(missing[0].sentence.find("frame.sides") != std::string::npos);
  const auto few = faults(corners + "sides = [\"p\", \"q\", \"r\", \"s\"]\n");
  REQUIRE(few.size() == 1);
  CHECK(few[0].why == Why::OutOfRange);
  CHECK(few[0].place.line == 7);
  const auto twice = faults(corners + "sides = [\"p\", \"q\", \"p\"]\n");
  REQUIRE(twice.size() == 1);
  CHECK(twice[0].why == Why::OutOfRange);
  CHECK(twice[0].place.column == 20);
  const auto both = faults("width = 28\n" + corners + "sides = [\"p\", \"q\", \"r\"]\n");
  REQUIRE(both.size() == 1);
  CHECK(both[0].place.line == 6);
  CHECK(both[0].sentence.find("beside") != std::string::npos);
  const auto two = faults("corners = [[0, 0], [9, 0]]\nsides = [\"p\", \"q\", \"r\"]\n");
  REQUIRE(two.size() == 1);
  CHECK(two[0].sentence.find("3 to 16") != std::string::npos);
}

TEST_CASE("job: places of keys, and of the nearest table above where a key is not there") {
  const Job job = read_job(kLeast + "[cloth]\n  flap = 2\n", "job").job;
  const auto place = [&](const char* key) {
    const Place at = job.places.of(key);
    return fmt::format("{}:{}", at.line, at.column);
  };
  CHECK(place("cloth.flap") == "15:10");
  CHECK(place("cloth.seam") == "14:1");
  CHECK(place("bumper.0.from") == "11:8");
  CHECK(place("bumper.0.from.1") == "11:18");
  CHECK(place("bumper.0.end_clearance") == "9:1");
  CHECK(place("paper.margin") == "1:1");
  CHECK(job.places.of("paper").file == "job");
}
