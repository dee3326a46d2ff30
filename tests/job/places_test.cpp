#include <doctest/doctest.h>

#include "job/least_job.hpp"

// Where something is along a side of the frame: the one way of saying it, and what is said to those
// who say it otherwise.
using namespace swathe;
using namespace swathe::test;

namespace {

std::string bumper_from(const std::string& from) {
  return changed(kLeast, "from = [\"front\", \"50%\"]", "from = " + from);
}

std::string bracket_at(const std::string& at, const std::string& more = "") {
  return kLeast + "[[bracket]]\nside = \"left\"\nat = " + at +
         "\nwidth = \"2 in\"\nheight = \"3 in\"\n" + more;
}

SidePlace place_of(const std::string& at) {
  const JobReading reading = read_job(bracket_at(at), "job");
  REQUIRE_MESSAGE(reading.faults.empty(), all_sentences(reading));
  return reading.job.brackets.at(0).at;
}

}  // namespace

TEST_CASE("places: a share, or a distance and the neighbor at whose corner it begins") {
  CHECK(std::get<SideShare>(place_of("\"50%\"")).fraction == 0.5);
  const auto front = std::get<FromCorner>(place_of("[\"9 in\", \"front\"]"));
  CHECK(front.distance == inches(9));
  CHECK(front.neighbor == "front");
  CHECK(std::get<FromCorner>(place_of("[9, \"back\"]")).neighbor == "back");
  CHECK(std::get<FromCorner>(place_of("[9, \"BACK\"]")).neighbor == "back");
}

TEST_CASE("places: a bare length is refused with both readings and the text to type") {
  const Refusal bare = only_fault(bumper_from("[\"front\", \"9 in\"]"));
  CHECK(bare.why == Why::Malformed);
  CHECK(bare.place.line == 11);
  CHECK(bare.place.column == 18);
  CHECK(
      bare.sentence ==
      "bumper A: from is [\"front\", \"9 in\"], expected also which corner of the frame it is "
      "measured from: from = [\"front\", \"9 in\", \"left\"] or [\"front\", \"9 in\", \"right\"]");
  CHECK(only_fault(bumper_from("[\"front\", 9]"))
            .sentence.ends_with("from = [\"front\", 9, \"left\"] or [\"front\", 9, \"right\"]"));
  for (const char* at : {"\"9 in\"", "[\"9 in\"]", "9"})
    CHECK(only_fault(bracket_at(at)).sentence.find(", \"back\"] or [") != std::string::npos);
  CHECK(only_fault(kLeast + "[[numerals.place]]\nside = \"back\"\ncenter = \"9 in\"\n")
            .sentence.ends_with("center = [\"9 in\", \"right\"] or [\"9 in\", \"left\"]"));
}

TEST_CASE("places: a neighbor that does not touch the side is refused with the two that do") {
  const Refusal across = only_fault(bumper_from("[\"front\", \"9 in\", \"back\"]"));
  CHECK(across.why == Why::UnknownName);
  CHECK(
      across.sentence ==
      "bumper A: from: side \"front\" has no corner with \"back\", expected \"right\" or \"left\": "
      "from = [\"front\", \"9 in\", \"left\"] or [\"front\", \"9 in\", \"right\"]");
  CHECK(only_fault(bracket_at("[\"9 in\", \"left\"]")).why == Why::UnknownName);
}

TEST_CASE("places: the form that older jobs have is refused with the one to type") {
  const Refusal old = only_fault(bracket_at("[\"left\", \"11 in\"]"));
  CHECK(old.sentence ==
        "bracket 1: at is [\"left\", \"11 in\"], expected the distance first, then the neighboring "
        "side whose corner with \"left\" it is measured from: at = [\"11 in\", \"back\"] or [\"11 "
        "in\", "
        "\"front\"]");
  const Refusal next_to = only_fault(bracket_at("[9, \"front\"]", "next_to = \"back\"\n"));
  CHECK(next_to.why == Why::UnknownKey);
  CHECK(next_to.sentence.find("at = [\"11 in\", \"back\"]") != std::string::npos);
}

TEST_CASE("places: neither a share, nor a word, nor a distance") {
  for (const char* from :
       {"[\"front\", \"middle\"]", "[\"front\", \"50%\", \"left\"]", "[\"front\", \"corner\", 3]",
        "[\"front\", \"opening\", \"9 in\", \"left\"]", "[\"front\", true]"}) {
    CAPTURE(from);
    CHECK(only_fault(bumper_from(from)).place.line == 11);
  }
  CHECK(only_fault(bumper_from("[\"front\", \"opening\", \"9 in\"]"))
            .sentence.find("the opening or a distance, not both") != std::string::npos);
  for (const char* at : {"\"middle\"", "[]", "[1, 2, 3]", "true", "\"150%\""})
    CHECK(only_fault(bracket_at(at)).place.line == 16);
}

TEST_CASE(
    "places: a centered bracket says where its holes are counted from, unless they are alike") {
  CHECK(read_job(bracket_at("\"50%\"", "holes = [[1, 1]]\n"), "job").faults.empty());
  CHECK(read_job(bracket_at("\"50%\"", "holes = [[0.5, 1], [1.5, 1]]\n"), "job").faults.empty());
  const Refusal uneven = only_fault(bracket_at("\"50%\"", "holes = [[0.5, 1]]\n"));
  CHECK(uneven.why == Why::Missing);
  CHECK(uneven.sentence ==
        "bracket 1: holes: the holes are not alike from both edges, expected also which edge they "
        "are counted from: holes_from = \"front\" or \"back\"");
  const auto told =
      read_job(bracket_at("\"50%\"", "holes = [[0.5, 1]]\nholes_from = \"back\"\n"), "job");
  CHECK(told.faults.empty());
  CHECK(measured_from(told.job.brackets[0]) == "back");
  CHECK(only_fault(bracket_at("\"50%\"", "holes_from = \"right\"\n")).why == Why::UnknownName);
  CHECK(only_fault(bracket_at("[9, \"front\"]", "holes_from = \"front\"\n")).why ==
        Why::OutOfRange);
}

TEST_CASE("places: an opening for a side, once") {
  const std::string opening = "[[opening]]\nside = \"front\"\nwidth = \"14 in\"\n";
  const Job job = read_job(kLeast + opening + "center = [\"13 in\", \"left\"]\n", "job").job;
  REQUIRE(job.openings.size() == 1);
  CHECK(job.openings[0].width == inches(14));
  CHECK(std::get<FromCorner>(job.openings[0].center).distance == inches(13));
  const Job plain = read_job(kLeast + opening, "job").job;
  CHECK(std::get<SideShare>(plain.openings.at(0).center).fraction == 0.5);
  CHECK(read_job(job_text(job), "job").job.openings.size() == 1);
  const Refusal twice = only_fault(kLeast + opening + opening);
  CHECK(twice.place.line == 18);
  CHECK(twice.sentence.find("a side that no other [[opening]] is in") != std::string::npos);
}

TEST_CASE("places: names and choices compare without case, and are spelled as the job has them") {
  const std::string text = kLeast +
                           "[boards]\njoint = \"Mitred\"\nlapping = [\"FRONT\"]\n"
                           "[numerals]\nheight = \"Season\"\nsides = \"ALL\"\n"
                           "[paper]\nsheet = \"Letter\"\n"
                           "[[bracket]]\nbumper = \"a\"\nside = \"Left\"\nat = \"50%\"\n"
                           "width = 1\nheight = 1\n";
  const JobReading reading = read_job(text, "job");
  REQUIRE_MESSAGE(reading.faults.empty(), all_sentences(reading));
  const Job& job = reading.job;
  CHECK(job.boards.joint == Joint::Mitred);
  CHECK(job.boards.lapping == std::vector<std::string>{"front"});
  CHECK(job.numerals.sides == std::vector<std::string>{"front", "left", "back", "right"});
  CHECK(job.paper.sheet == "letter");
  CHECK(job.brackets.at(0).bumper == "A");
  CHECK(job.brackets[0].side == "left");
  // So two that differ by nothing else are one name.
  check_only("[[bumper]]\nname = \"a\"\nfrom = [\"back\", \"50%\"]\nto = [\"left\", \"50%\"]\n",
             Why::OutOfRange, {15, 8}, "no other bumper", "bumper.1");
}
