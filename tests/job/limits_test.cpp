#include "job/limits.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "job/least_job.hpp"

// What is past a limit is refused by its name, at its place.
namespace swathe::test {
namespace {

std::string repeated(int times, const std::string& text) {
  std::string all;
  for (int i = 0; i < times; ++i) all += text;
  return all;
}

/// "{a0 = VALUE, a1 = VALUE}", a key for each.
std::string inline_table(int keys, const std::string& value) {
  std::string all;
  for (int i = 0; i < keys; ++i) all += fmt::format("{}a{:03} = {}", i == 0 ? "" : ", ", i, value);
  return "{" + all + "}";
}

}  // namespace

TEST_CASE("limits: a length past its range is refused where it stands") {
  struct Past {
    const char *table, *key, *value;
  };
  for (const Past& past :
       {Past{"boards", "thickness", "101 mm"}, {"boards", "height", "1001 mm"},
        {"boards", "kerf", "21 mm"},           {"boards", "hard_depth", "201 mm"},
        {"padding", "diameter", "501 mm"},     {"padding", "depth", "501 mm"},
        {"padding", "height", "501 mm"},       {"padding", "edge_radius", "251 mm"},
        {"padding", "stock", "20001 mm"},      {"cloth", "thickness", "11 mm"},
        {"cloth", "roll_width", "20001 mm"},   {"cloth", "buy_step", "5001 mm"},
        {"cloth", "flap", "1001 mm"},          {"cloth", "staple_line", "1001 mm"},
        {"cloth", "staple_spacing", "4 mm"},   {"cloth", "setback", "201 mm"},
        {"cloth", "cut_clear", "201 mm"},      {"cloth", "seam", "201 mm"},
        {"cloth", "end_reach", "1001 mm"},     {"cloth", "longest_piece", "20001 mm"},
        {"numerals", "height", "1001 mm"},     {"numerals", "spacing", "201 mm"},
        {"numerals", "outline", "201 mm"},     {"numerals", "bridge", "51 mm"},
        {"sight", "step", "31 deg"},           {"sight", "least_angle", "11 deg"},
        {"paper", "margin", "201 mm"},         {"paper", "overlap", "201 mm"}}) {
    const int column = static_cast<int>(std::string(past.key).size()) + 4;
    check_only(fmt::format("[{}]\n{} = \"{}\"\n", past.table, past.key, past.value),
               Why::OutOfRange, {15, column}, fmt::format("{}.{}", past.table, past.key),
               past.table);
  }
  check_only("[boards]\nstock = [\"1 m\", \"20001 mm\"]\n", Why::OutOfRange, {15, 17},
             "boards.stock", "boards");
  check_only("[sight]\ndistance = [\"101 m\"]\n", Why::OutOfRange, {15, 13}, "sight.distance",
             "sight");
  check_only("[sight]\neye_height = [\"11 m\"]\n", Why::OutOfRange, {15, 15}, "sight.eye_height",
             "sight");
  check_only("[padding]\ndensity = 5001\n", Why::OutOfRange, {15, 11}, "padding.density",
             "padding");
  check_only("[cloth]\ndensity = 11\n", Why::OutOfRange, {15, 11}, "cloth.density", "cloth");
  check_only("[numerals]\naxes = { wght = 40000 }\n", Why::OutOfRange, {15, 17}, "wght",
             "numerals");
  check_only("[[sight.blind]]\nbox = [[0, 0, 0], [1, 1, \"20001 mm\"]]\n", Why::OutOfRange,
             {15, 26}, "sight.blind 1: box", "sight");
  for (const auto& [was, now] :
       {std::pair{"width = \"28 in\"", "width = \"20001 mm\""},
        std::pair{"depth = \"30 in\"", "depth = \"20001 mm\""},
        std::pair{"depth = \"30 in\"", "depth = \"30 in\"\nfit = \"51 mm\""},
        std::pair{"depth = \"30 in\"", "depth = \"30 in\"\nfloor_gap = \"2001 mm\""}}) {
    const Refusal fault = only_fault(changed(kLeast, was, now));
    CHECK(fault.why == Why::OutOfRange);
    CHECK(fault.place.line >= 6);
    CHECK(fault.sentence.find("frame.") == 0);
  }
}

TEST_CASE("limits: one more than may be is refused where it stands") {
  check_only(repeated(33, "[[numerals.place]]\nbumper = \"A\"\nside = \"left\"\n"), Why::TooLarge,
             {14 + 3 * 32, 1}, "place is there 33 times, expected at most 32", "numerals");
  check_only(repeated(33, "[[sight.blind]]\nbox = [[0, 0, 0], [1, 1, 1]]\n"), Why::TooLarge,
             {14 + 2 * 32, 1}, "blind is there 33 times, expected at most 32", "sight");
  check_only("[cloth]\ncolors = " + inline_table(9, "\"#fff\"") + "\n", Why::TooLarge, {15, 10},
             "cloth.colors has 9 colors, expected 1 to 8", "cloth");
  check_only("[numerals]\naxes = " + inline_table(17, "1") + "\n", Why::TooLarge, {15, 8},
             "numerals.axes has 17 axes, expected at most 16", "numerals");
  check_only("[sight]\ndistance = [" + repeated(9, "240, ") + "]\n", Why::TooLarge, {15, 12},
             "sight.distance is a list of 9, expected a list of 1 to 8", "sight");
  check_only("[sight]\neye_height = [" + repeated(9, "48, ") + "]\n", Why::TooLarge, {15, 14},
             "sight.eye_height is a list of 9", "sight");
  check_only("[[numerals.place]]\nbumper = \"A\"\nside = \"left\"\nsplit = 5\n", Why::OutOfRange,
             {17, 9}, "split is 5, expected a whole number, 1 to 4", "numerals");
  check_only("[[numerals.place]]\nbumper = \"A\"\nside = \"left\"\ncenter = \"9%\"\nsplit = 2\n",
             Why::OutOfRange, {18, 9}, "beside center", "numerals");
  const Refusal split =
      only_fault(changed(kLeast, "20486", "46") +
                 "[[numerals.place]]\nbumper = \"A\"\nside = \"left\"\nsplit = 2\n");
  CHECK(split.why == Why::OutOfRange);
  CHECK(split.sentence.find("fewer than the 2 digits") != std::string::npos);

  const std::string frame = "width = \"28 in\"\ndepth = \"30 in\"\n";
  std::string corners = "corners = [", sides = "sides = [\"front\", \"back\"";
  for (int i = 0; i < 17; ++i) corners += fmt::format("[{}, {}], ", i, i * i);
  for (int i = 2; i < 17; ++i) sides += fmt::format(", \"{}\"", i);
  const JobReading many = read_job(changed(kLeast, frame, corners + "]\n" + sides + "]\n"), "job");
  REQUIRE(many.faults.size() == 2);
  for (const int at : {0, 1}) {
    const Refusal& fault = many.faults[static_cast<std::size_t>(at)];
    CHECK(fault.why == Why::TooLarge);
    CHECK(fault.place.line == 6 + at);
    CHECK(fault.sentence.find("is a list of 17, expected a list of 3 to 16") != std::string::npos);
  }
}

TEST_CASE("limits: a name too long is refused where it stands") {
  const std::string name = std::string(25, 'n'), path = std::string(201, 'p');
  check_only(
      "[[bumper]]\nname = \"" + name + "\"\nfrom = [\"back\", \"0%\"]\nto = [\"back\", \"1%\"]\n",
      Why::OutOfRange, {15, 8}, "1 to 24 printable characters", "bumper.1");
  check_only("[cloth]\ncolors = { " + name + " = \"#fff\" }\n", Why::OutOfRange, {15, 12},
             "1 to 24 printable characters", "cloth");
  check_only("[numerals]\nfont = \"" + path + "\"\n", Why::OutOfRange, {15, 8},
             "numerals.font is \"pppp", "numerals");
  const std::string number = "number = \"20486\"\n";
  const Refusal season =
      only_fault(changed(kLeast, number, number + "season = \"" + path + "\"\n"));
  CHECK(season.why == Why::OutOfRange);
  CHECK(season.place.line == 4);
  CHECK(season.sentence.find("1 to 200 printable characters") != std::string::npos);
}

TEST_CASE("limits: a job too long is refused at its beginning") {
  const Refusal fault = only_fault(std::string(kMostJobBytes + 1, '#'));
  CHECK(fault.why == Why::TooLarge);
  CHECK(fault.place.line == 1);
  CHECK(fault.sentence == "the job is 1048577 bytes long, expected at most 1048576");
}

TEST_CASE("limits: a line of a million columns has its places found in time") {
  std::string line = "[cloth]\nx = [";  // five bytes an item, four characters
  while (line.size() < 900000) line += "\"\xc3\xbc\",";
  const JobReading reading = read_job(kLeast + line + "]\n", "job");
  REQUIRE(reading.faults.size() == 1);
  CHECK(reading.faults[0].why == Why::UnknownKey);
  CHECK(reading.job.places.of("cloth.x.100000").column == 6 + 5 * 100000);
}

}  // namespace swathe::test
