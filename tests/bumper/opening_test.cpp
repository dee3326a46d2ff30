#include <doctest/doctest.h>

#include <algorithm>

#include "support/jobs.hpp"
#include "swathe/bumper.hpp"

// Openings, worked by hand on a frame of 28 by 30 in with a play of 1/16 in.
namespace swathe {
namespace {

constexpr double kInch = 25.4;

/// One bumper from an opening of the front all round to it.
Job with_opening(double width_in, const SidePlace& center = SideShare{0.5}) {
  Job job = test::c_halves(28 * kInch, 30 * kInch);
  job.cloth.thickness = mm(0.5);
  job.openings = {{"front", inches(width_in), center}};
  job.bumpers = {{"A", {"front", RunEnd::Opening{}}, {"front", RunEnd::Opening{}}}};
  return job;
}

Outcome<Run> run_of(const Job& job) {
  const auto frame = Frame::make(job.frame, job.places);
  REQUIRE(frame.has_value());
  return make_run(*frame, test::section_of(job), job.padding, job.bumpers[0], 0, job.places,
                  job.units, job.openings);
}

TEST_CASE("an opening is so wide from cover to cover, its bumper's ends alike") {
  for (const double clearance_in : {0.0, 0.25, 1.0}) {
    Job job = with_opening(14);
    job.bumpers[0].end_clearance = inches(clearance_in);
    const auto run = run_of(job);
    REQUIRE(run.has_value());
    // Seven inches of frame, and 1/16 in of play, are left at either side; of that at most three
    // layers of cloth of 0.5 mm lie on the bumper's end: 178.5875 mm + ... the board ends 7 in and
    // 1/16 in from the boards' corner, less 1.5 mm.
    const double beside = 7 * 25.4 + 25.4 / 16 - 3 * 0.5;
    const RunSide &start = run->sides.front(), &end = run->sides.back();
    CHECK(start.to_x - start.from_x == doctest::Approx(beside));
    CHECK(end.to_x - end.from_x == doctest::Approx(beside));
    // From cover to cover: the way between the ends' faces, less the cloth on both.
    CHECK(start.from_x - end.to_x - 2 * 3 * 0.5 == doctest::Approx(14 * 25.4));
  }
}

TEST_CASE("an opening's center is told as any place along a side") {
  // 17 in from the corner with left: the middle of the opening, 10 in wide, is 11 in from right.
  const auto run = run_of(with_opening(10, FromCorner{inches(17), "left"}));
  REQUIRE(run.has_value());
  CHECK(run->sides.back().to_x == doctest::Approx((6 + 1.0 / 16) * kInch - 1.5));
  CHECK(run->sides.front().from_x == doctest::Approx((16 + 1.0 / 16) * kInch + 1.5));
}

TEST_CASE("distances are on the frame itself: as far from both corners, equal boards") {
  Job job = test::c_halves(28 * kInch, 30 * kInch);
  job.bumpers = {{"A",
                  {"front", FromCorner{inches(7), "left"}},
                  {"front", FromCorner{inches(7), "right"}},
                  inches(0.25)}};
  for (const double fit_in : {0.0, 1.0 / 16, 0.5}) {
    job.frame.fit = inches(fit_in);
    const auto run = run_of(job);
    REQUIRE(run.has_value());
    const RunSide &start = run->sides.front(), &end = run->sides.back();
    // 7 in of frame and the play, less the clearance.
    CHECK(start.to_x - start.from_x == doctest::Approx((7 + fit_in - 0.25) * kInch));
    CHECK(end.to_x - end.from_x == doctest::Approx((7 + fit_in - 0.25) * kInch));
  }
}

TEST_CASE("an end may not be given by the opening and by a distance too") {
  Job job = with_opening(14);
  job.places.set("bumper.0.to", {"job.toml", 9, 6});
  job.bumpers[0].to.at = FromCorner{inches(6), "right"};
  const auto run = run_of(job);
  REQUIRE_FALSE(run.has_value());
  CHECK(run.error()[0].why == Why::OutOfRange);
  CHECK(run.error()[0].place.line == 9);
  CHECK(run.error()[0].sentence ==
        "the [[opening]] of side \"front\" says where this end is, and so does this place: give "
        "[\"front\", \"opening\"], or take the [[opening]] out");
  // The far end of a piece that stands between the opening and the corner is its own.
  job.bumpers[0] = {"A", {"front", RunEnd::Opening{}}, {"front", RunEnd::Share{1.0}}};
  CHECK(run_of(job).has_value());
}

TEST_CASE("an end at an opening that no table gives is refused with what to write") {
  Job job = with_opening(14);
  job.openings.clear();
  const auto run = run_of(job);
  REQUIRE_FALSE(run.has_value());
  CHECK(run.error()[0].why == Why::Missing);
  CHECK(run.error()[0].sentence ==
        "side \"front\" has no opening, expected [[opening]] with side = \"front\" and its width");
}

TEST_CASE("an opening that leaves less than the bumper's depth says the width that does") {
  Job job = with_opening(24);
  const auto wide = run_of(job);
  REQUIRE_FALSE(wide.has_value());
  const std::string& sentence = wide.error()[0].sentence;
  const std::string before = "the side front is 28 in long, give its opening a width of at most ";
  const auto at = sentence.find(before);
  REQUIRE_MESSAGE(at != std::string::npos, sentence);
  const auto most = parse_length(sentence.substr(at + before.size()), Units::Inches);
  REQUIRE(most.has_value());
  job.openings[0].width = *most;
  CHECK(run_of(job).has_value());
  job.openings[0].width = *most + inches(1.0 / 16);
  CHECK_FALSE(run_of(job).has_value());
}

Refusals faults_of(const Job& job) {
  const auto frame = Frame::make(job.frame, job.places);
  REQUIRE(frame.has_value());
  std::vector<Run> runs;
  for (const Wrap& wrap : test::wraps_of(job)) runs.push_back(wrap.run());
  return faults_of_openings(*frame, runs, job.openings, job.places, job.units);
}

TEST_CASE("an opening past its side, or with a bumper across it, is refused") {
  CHECK(faults_of(with_opening(14)).empty());
  Job job = test::c_halves(28 * kInch, 30 * kInch);
  job.openings = {{"left", inches(10), SideShare{0.5}}};
  job.places.set("bumper.0", {"job.toml", 12, 1});
  Refusals across = faults_of(job);
  REQUIRE(across.size() == 1);  // A turns from front to left to back
  CHECK(across[0].why == Why::DoesNotFit);
  CHECK(across[0].place.line == 12);

  job.openings = {{"left", inches(10), FromCorner{inches(4), "front"}}};
  job.places.set("opening.0.width", {"job.toml", 7, 9});
  const Refusals past = faults_of(job);
  REQUIRE(past.size() == 1);
  CHECK(past[0].place.line == 7);
  // 4 in from the corner: 8 in reach up to it.
  CHECK(past[0].sentence ==
        "the opening is 10 in wide and reaches 1 in past the frame: the side left is 30 in long, "
        "expected less than 8 in with this center");
}

}  // namespace
}  // namespace swathe
