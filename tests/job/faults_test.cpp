#include <doctest/doctest.h>
#include <fmt/format.h>

#include "job/least_job.hpp"

using namespace swathe;
using namespace swathe::test;

TEST_CASE("job: missing tables stand at 1:1, missing keys at their table") {
  const JobReading empty = read_job("", "job");
  REQUIRE(empty.faults.size() == 3);
  for (const Refusal& fault : empty.faults) {
    CHECK(fault.why == Why::Missing);
    CHECK(fault.place.line == 1);
    CHECK(fault.place.column == 1);
  }
  CHECK(all_sentences(empty).find("[job]") != std::string::npos);
  CHECK(all_sentences(empty).find("[frame]") != std::string::npos);
  CHECK(all_sentences(empty).find("[[bumper]]") != std::string::npos);
  CHECK(empty.unsound == std::set<std::string>{"job", "frame", "bumper"});

  const Refusal width = only_fault(changed(kLeast, "width = \"28 in\"\n", ""));
  CHECK(width.why == Why::Missing);
  CHECK(width.place.line == 5);
  CHECK(width.sentence.find("frame.width") != std::string::npos);
  check_only("[[bumper]]\nfrom = [\"back\", \"0%\"]\nto = [\"back\", \"corner\"]\n", Why::Missing,
             {14, 1}, "bumper 2: name", "bumper.1");
  check_only("[[bumper]]\nname = \"B\"\nfrom = [\"back\", \"0%\"]\n", Why::Missing, {14, 1},
             "bumper B: to", "bumper.1");
  check_only("[[bracket]]\nat = \"50%\"\nwidth = 1\nheight = 1\n", Why::Missing, {14, 1},
             "bracket 1: side", "bracket.0");
  check_only("[[opening]]\nside = \"left\"\n", Why::Missing, {14, 1}, "opening 1: width",
             "opening.0");
  check_only("[[bracket]]\nbumper = \"A\"\nside = \"left\"\nwidth = 1\nheight = 1\n", Why::Missing,
             {14, 1}, "bracket 1: at", "bracket.0");
}

TEST_CASE("job: an unknown key names the nearest known one") {
  check_only("[clth]\nflap = 1\n", Why::UnknownKey, {14, 2}, "\"cloth\"", "");
  check_only("[cloth]\nflaps = 1\n", Why::UnknownKey, {15, 1},
             "cloth.flaps is not a key, the nearest known one is \"flap\"", "cloth");
  check_only(
      "[[bumper]]\nname=\"B\"\nform = [\"back\", 0]\nfrom = [\"back\", \"0%\"]\nto = [\"back\", "
      "\"9%\"]\n",
      Why::UnknownKey, {16, 1}, "\"from\"", "bumper.1");
  check_only("[padding]\n  diametre = \"2 in\"\n", Why::UnknownKey, {15, 3}, "\"diameter\"",
             "padding");
}

TEST_CASE("job: a wrong type says what was expected") {
  check_only("[cloth]\nflap = true\n", Why::WrongType, {15, 8}, "a length", "cloth");
  check_only("[padding]\nstack = 2.0\n", Why::WrongType, {15, 9}, "whole number", "padding");
  check_only("[padding]\ndensity = \"30\"\n", Why::WrongType, {15, 11}, "a number", "padding");
  check_only("[cloth]\nmay_join = 0\n", Why::WrongType, {15, 12}, "true or false", "cloth");
  check_only("[sight]\nstep = []\n", Why::WrongType, {15, 8}, "an angle", "sight");
  check_only("[sight]\ndistance = \"20 ft\"\n", Why::WrongType, {15, 12}, "a list", "sight");
  check_only("[boards]\nstock = [1, 2, 3]\n", Why::WrongType, {15, 9}, "2 lengths", "boards");
  check_only("[boards]\njoint = 1\n", Why::WrongType, {15, 9}, "\"lapped\" or \"mitred\"",
             "boards");
  check_only("[numerals]\nfont = 7\n", Why::WrongType, {15, 8}, "a string", "numerals");
  check_only("[numerals]\ncolor = 7\n", Why::WrongType, {15, 9}, "a color", "numerals");
  check_only("[numerals]\naxes = 7\n", Why::WrongType, {15, 8}, "a table", "numerals");
  check_only("bracket = 1\n", Why::UnknownKey, {14, 1}, "bracket is not a key", "bumper.0");
  check_only("[bracket]\nside = 1\n", Why::WrongType, {14, 1}, "type [[bracket]]", "bracket");
  check_only("[cloth.colors]\nred = 1979-05-27\n", Why::WrongType, {15, 7}, "date", "cloth");
}

TEST_CASE("job: what is no length, angle or color is malformed") {
  check_only("[cloth]\nflap = \"wide\"\n", Why::Malformed, {15, 8}, "\"wide\"", "cloth");
  check_only("[cloth]\nflap = \"1/0 in\"\n", Why::Malformed, {15, 8}, "a length", "cloth");
  check_only("[sight]\nstep = \"1 turn\"\n", Why::Malformed, {15, 8}, "an angle", "sight");
  check_only("[numerals]\ncolor = \"white\"\n", Why::Malformed, {15, 9}, "#b5121b", "numerals");
  check_only("[numerals]\nheight = \"tall\"\n", Why::Malformed, {15, 10}, "season", "numerals");
  check_only("[numerals]\nspacing = \"wide\"\n", Why::Malformed, {15, 11}, "tabular", "numerals");
}

TEST_CASE("job: a value out of its range says the range") {
  check_only("[boards]\nthickness = 0\n", Why::OutOfRange, {15, 13}, "expected 1/16 in to 3 7/8 in",
             "boards");
  check_only("[boards]\nthickness = \"-1 in\"\n", Why::OutOfRange, {15, 13}, "3 7/8 in", "boards");
  check_only("[boards]\nthickness = inf\n", Why::OutOfRange, {15, 13}, "is inf", "boards");
  check_only("[boards]\nthickness = nan\n", Why::OutOfRange, {15, 13}, "is nan", "boards");
  check_only("[padding]\nstack = 5\n", Why::OutOfRange, {15, 9}, "1 to 4", "padding");
  check_only("[padding]\nstack = -9223372036854775808\n", Why::OutOfRange, {15, 9}, "1 to 4",
             "padding");
  check_only("[padding]\ndensity = nan\n", Why::OutOfRange, {15, 11}, "1 to 5000", "padding");
  check_only("[cloth]\nstretch_along = 0.6\n", Why::OutOfRange, {15, 17}, "0 to 0.5", "cloth");
  check_only("[sight]\nstep = \"0 deg\"\n", Why::OutOfRange, {15, 8}, "0.1 to 30 deg", "sight");
  check_only("[sight]\ndistance = []\n", Why::OutOfRange, {15, 12}, "1 to 8", "sight");
  check_only("[sight]\ndistance = [1000, 0]\n", Why::OutOfRange, {15, 19}, "sight.distance",
             "sight");
  check_only("[numerals]\nspares = 21\n", Why::OutOfRange, {15, 10}, "0 to 20", "numerals");
  check_only("[numerals]\nmethod = \"glue\"\n", Why::OutOfRange, {15, 10}, "\"iron-on\"",
             "numerals");
  check_only("[numerals]\naxes = { wght = 1e300 }\n", Why::OutOfRange, {15, 17}, "32767",
             "numerals");
  check_only("[cloth]\ncolors = {}\n", Why::OutOfRange, {15, 10}, "1 to 8", "cloth");
  check_only("[paper]\nsheet = [\"1 in\", \"2 m\"]\n", Why::OutOfRange, {15, 10}, "200 in",
             "paper");
  const std::string title = "title = \"Covers\"";
  for (const char* wrong :
       {"title = \"\"", "title = \"a\\u0007\"", "title = \"a\\nb\"", "title = \"a\\u202eb\""})
    CHECK(only_fault(changed(kLeast, title, wrong)).why == Why::OutOfRange);
  CHECK(only_fault(changed(kLeast, title, fmt::format("title = \"{:x>121}\"", ""))).place.line ==
        2);
  std::string umlauts;
  for (int i = 0; i < 120; ++i) umlauts += "\xc3\xbc";
  CHECK(read_job(changed(kLeast, title, fmt::format("title = \"{}\"", umlauts)), "job")
            .faults.empty());
}

TEST_CASE("job: the number is 1 to 5 Arabic digits") {
  for (const char* good : {"0", "1", "99999", "00001"})
    CHECK(read_job(changed(kLeast, "20486", good), "job").job.number == good);
  for (const char* wrong : {"", "123456", "12a", " 1", "-1", "1.5", "\xd9\xa1"}) {
    const JobReading reading = read_job(changed(kLeast, "20486", wrong), "job");
    REQUIRE(reading.faults.size() == 1);
    CHECK(reading.faults[0].why == Why::OutOfRange);
    CHECK(reading.faults[0].place.line == 3);
    CHECK(reading.job.number.empty());
  }
}

TEST_CASE("job: a number or season without quotes is taken where it can mean only one thing") {
  for (const char* good : {"20486", "7", "0"}) {
    const JobReading reading = read_job(changed(kLeast, "\"20486\"", good), "job");
    CHECK(reading.faults.empty());
    CHECK(reading.job.number == good);
  }
  for (const auto& [text, typed] :
       std::vector<std::pair<std::string, std::string>>{{"0x5006", "\"20486\""},
                                                        {"20_486", "\"20486\""},
                                                        {"+486", "\"486\""},
                                                        {"00486", "\"00486\""},
                                                        {"0b11", "\"3\""}}) {
    const Refusal fault = only_fault(changed(kLeast, "\"20486\"", text));
    CAPTURE(fault.sentence);
    CHECK(fault.place.line == 3);
    CHECK(fault.place.column == 10);
    CHECK(fault.sentence.ends_with(": type number = " + typed));
  }
  for (const char* wrong : {"-20486", "20486.0", "true", "1979-05-27"})
    CHECK(only_fault(changed(kLeast, "\"20486\"", wrong)).why == Why::WrongType);
  CHECK(only_fault(changed(kLeast, "\"20486\"", "123456")).why == Why::OutOfRange);

  const auto with_season = [](const std::string& season) {
    return read_job(changed(kLeast, "title = \"Covers\"", "season = " + season), "job");
  };
  CHECK(with_season("2025").faults.empty());
  CHECK(with_season("2025").job.season == "2025");
  for (const char* wrong : {"2_025", "0x7e9", "2025.0"}) {
    REQUIRE(with_season(wrong).faults.size() == 1);
    CHECK(with_season(wrong).faults[0].sentence.find("a string") != std::string::npos);
  }
}

TEST_CASE("job: names must be there") {
  check_only("[boards]\nlapping = [\"front\", \"bakc\"]\n", Why::UnknownName, {15, 21},
             "\"front\", \"left\", \"back\" or \"right\"", "boards");
  check_only("[padding]\nlapping = [\"front\", \"front\"]\n", Why::OutOfRange, {15, 21}, "twice",
             "padding");
  check_only("[numerals]\nsides = [\"top\"]\n", Why::UnknownName, {15, 10}, "\"top\"", "numerals");
  check_only("[numerals]\nsides = []\n", Why::OutOfRange, {15, 9},
             "an empty list, expected \"auto\", \"all\", or the sides", "numerals");
  check_only("[numerals]\nsides = \"most\"\n", Why::OutOfRange, {15, 9}, "\"auto\", \"all\" or",
             "numerals");
  check_only("[paper]\nsheet = \"a5\"\n", Why::UnknownName, {15, 9}, "\"a4\"", "paper");
  check_only("[[bumper]]\nname = \"B\"\nfrom = [\"rear\", \"0%\"]\nto = [\"right\", \"1%\"]\n",
             Why::UnknownName, {16, 9}, "\"rear\"", "bumper.1");
  check_only("[[bumper]]\nname = \"A\"\nfrom = [\"back\", \"0%\"]\nto = [\"right\", \"1%\"]\n",
             Why::OutOfRange, {15, 8}, "no other bumper", "bumper.1");
  check_only("[[bumper]]\nname = \"../A\"\nfrom = [\"back\", \"0%\"]\nto = [\"right\", \"1%\"]\n",
             Why::OutOfRange, {15, 8}, "slash", "bumper.1");
  check_only(
      "[[bracket]]\nbumper = \"B\"\nside = \"left\"\nat = [1, \"front\"]\nwidth = 1\nheight = 1\n",
      Why::UnknownName, {15, 10}, "a bumper of this job: \"A\"", "bracket.0");
  check_only(
      "[[bracket]]\nbumper = \"A\"\nside = \"lft\"\nat = [1, \"front\"]\nwidth = 1\nheight = 1\n",
      Why::UnknownName, {16, 8}, "\"lft\"", "bracket.0");
  check_only("[numerals]\naxes = { weight = 1 }\n", Why::UnknownName, {15, 10}, "wght", "numerals");
}

TEST_CASE("job: holes stand on their bracket") {
  const std::string bracket =
      "[[bracket]]\nbumper = \"A\"\nside = \"left\"\nat = [1, \"back\"]\nwidth = 2\nheight = 3\n";
  check_only(bracket + "holes = [[1, 1], [2.5, 1]]\n", Why::DoesNotFit, {20, 18}, "2 1/2 in along",
             "bracket.0");
  check_only(bracket + "holes = [[1, -1]]\n", Why::OutOfRange, {20, 14}, "holes", "bracket.0");
  check_only(bracket + "holes = [1]\n", Why::WrongType, {20, 10}, "2 lengths", "bracket.0");
  check_only(bracket + "cloth = \"over\"\n", Why::OutOfRange, {20, 9}, "\"window\"", "bracket.0");
  const Job job = read_job(kLeast + bracket + "holes = [[2, 3], [0, \"1/2 in\"]]\n", "job").job;
  REQUIRE(job.brackets.size() == 1);
  CHECK(std::get<FromCorner>(job.brackets[0].at).neighbor == "back");
  REQUIRE(job.brackets[0].holes.size() == 2);
  CHECK(job.brackets[0].holes[1].y == doctest::Approx(12.7));
}

TEST_CASE("job: counts have limits") {
  std::string bumpers, brackets;
  for (int i = 0; i < 32; ++i)
    bumpers +=
        fmt::format("[[bumper]]\nname=\"{}\"\nfrom=[\"left\",\"0%\"]\nto=[\"left\",\"1%\"]\n", i);
  check_only(bumpers, Why::TooLarge, {14 + 4 * 31, 1}, "at most 32", "bumper");
  for (int i = 0; i < 65; ++i)
    brackets += "[[bracket]]\nbumper=\"A\"\nside=\"left\"\nat=[1,\"front\"]\nwidth=1\nheight=1\n";
  check_only(brackets, Why::TooLarge, {14 + 6 * 64, 1}, "at most 64", "bracket");
  std::string holes = "holes = [";
  for (int i = 0; i < 17; ++i) holes += "[0,0],";
  check_only("[[bracket]]\nbumper=\"A\"\nside=\"left\"\nat=[1,\"front\"]\nwidth=1\nheight=1\n" +
                 holes + "]\n",
             Why::TooLarge, {20, 9}, "0 to 16", "bracket.0");
}

TEST_CASE("job: a print's scales are measured about as long as they are") {
  check_only("[paper]\nmeasured = [\"89.9 mm\", \"100 mm\"]\n", Why::OutOfRange, {15, 13},
             "3 9/16 in", "paper");
  check_only("[paper]\nmeasured = [\"100 mm\", \"4.4 in\"]\n", Why::OutOfRange, {15, 23},
             "4 5/16 in", "paper");
  check_only("[paper]\nmeasured = \"99 mm\"\n", Why::WrongType, {15, 12}, "2 lengths", "paper");
  const JobReading reading = read_job(kLeast + "[paper]\nmeasured = [\"90 mm\", 4]\n", "job");
  REQUIRE(reading.faults.empty());
  CHECK(*reading.job.paper.measured == std::array{mm(90), inches(4)});
}

TEST_CASE("job: a roll has a width, and no other paper has") {
  const JobReading reading =
      read_job(kLeast + "[paper]\nsheet = \"roll\"\nwidth = \"24 in\"\n", "job");
  REQUIRE(reading.faults.empty());
  CHECK(reading.job.paper.width == inches(24));
  check_only("[paper]\nsheet = \"roll\"\n", Why::Missing, {14, 1}, "paper.width", "paper");
  check_only("[paper]\nwidth = \"24 in\"\n", Why::OutOfRange, {15, 9}, "\"roll\"", "paper");
  check_only("[paper]\nsheet = \"roll\"\nwidth = \"201 in\"\n", Why::OutOfRange, {16, 9}, "200 in",
             "paper");
}

TEST_CASE("job: a fault leaves the default and marks its table") {
  const JobReading reading =
      read_job(kLeast + "[cloth]\nflap = \"wide\"\nsetback = \"1/4 in\"\n", "job");
  CHECK(reading.job.cloth.flap == inches(2));
  CHECK(reading.job.cloth.setback == inches(0.25));
  CHECK_FALSE(reading.sound("cloth"));
  CHECK(reading.sound("frame"));
}

TEST_CASE("job: ten faults are ten faults, by place") {
  const std::string text =
      "[job]\n"
      "number = 7.5\n"   // 1
      "unit = \"in\"\n"  // 2
      "[frame]\n"
      "width = \"28 in\"\n"  // 3: no depth, at [frame]
      "[boards]\n"
      "thickness = \"0 in\"\n"           // 4
      "lapping = [\"front\", \"up\"]\n"  // 5
      "[cloth]\n"
      "relief = \"glued\"\n"  // 6
      "flap = 2 # fine\n"
      "seam = \"half\"\n"  // 7
      "[[bumper]]\n"
      "name = \"A\"\n"
      "from = [\"front\", \"50%\"]\n"
      "to = [\"back\", \"150%\"]\n"  // 8
      "[[bracket]]\n"
      "bumper = \"B\"\n"  // 9
      "side = \"left\"\n"
      "at = [\"middle\", 1]\n"  // 10
      "width = 1\n"
      "height = 1\n";
  const JobReading reading = read_job(text, "job");
  CAPTURE(all_sentences(reading));
  REQUIRE(reading.faults.size() == 10);
  const int lines[] = {2, 3, 4, 7, 8, 10, 12, 16, 18, 20};
  for (std::size_t i = 0; i < 10; ++i) CHECK(reading.faults[i].place.line == lines[i]);
  CHECK(reading.unsound ==
        std::set<std::string>{"job", "frame", "boards", "cloth", "bumper.0", "bracket.0"});
}

TEST_CASE("job: a sheet smaller than its margins is refused") {
  check_only("[paper]\nsheet = [\"6 in\", \"9 in\"]\nmargin = \"2 in\"\n", Why::DoesNotFit,
             {16, 10}, "1 1/2 in of the sheet's 6 in", "paper");
}
