#include <doctest/doctest.h>

#include "support/jobs.hpp"
#include "swathe/bumper.hpp"

namespace swathe {
namespace {

Refusals refused(const Job& job) {
  const auto frame = Frame::make(job.frame, job.places);
  if (!frame) return frame.error();
  const Section section = test::section_of(job);
  std::vector<Run> runs;
  for (std::size_t k = 0; k < job.bumpers.size(); ++k) {
    auto run =
        make_run(*frame, section, job.padding, job.bumpers[k], static_cast<int>(k), job.places);
    if (!run) return run.error();
    runs.push_back(*run);
  }
  const auto gaps = gaps_between(*frame, section, runs, job.places);
  return gaps ? Refusals{} : gaps.error();
}

TEST_CASE("two halves: the gaps are both clearances") {
  const Job job = test::worked_job();
  std::vector<Run> runs;
  for (const Wrap& wrap : test::wraps_of(job)) runs.push_back(wrap.run());
  const Wrap wrap = test::wraps_of(job)[0];
  const auto gaps = gaps_between(wrap.frame(), wrap.section(), runs, job.places);
  REQUIRE(gaps.has_value());
  for (const double gap : *gaps) CHECK(gap == doctest::Approx(12.7));
}

TEST_CASE("one a side: lapping ends fill the corners, butting ones stop against them") {
  Job job = test::worked_job();
  job.bumpers.clear();
  for (const char* side : {"front", "left", "back", "right"})
    job.bumpers.push_back({side, {side, RunEnd::Corner{}}, {side, RunEnd::Corner{}}, mm(5)});
  const std::vector<Wrap> wraps = test::wraps_of(job);
  // Out to the neighbors' outer faces: the frame's width and twice the depth of 3 1/4 in, less
  // clearances.
  CHECK(wraps[0].run().length == doctest::Approx((28 + 2 * 3.25) * 25.4 - 10));
  // Up to the back of the front's padding, which lies 3/4 in past the frame's side.
  CHECK(wraps[1].run().length == doctest::Approx((30 + 2 * 0.75) * 25.4 - 10));
  std::vector<Run> runs;
  for (const Wrap& wrap : wraps) runs.push_back(wrap.run());
  const auto gaps = gaps_between(wraps[0].frame(), wraps[0].section(), runs, job.places);
  REQUIRE(gaps.has_value());
  for (const double gap : *gaps) CHECK(gap == doctest::Approx(5.0));
}

TEST_CASE("one long wrap with an opening") {
  Job job = test::worked_job();
  job.bumpers = {{"A",
                  {"front", FromCorner{inches(8), "left"}},
                  {"front", FromCorner{inches(8), "right"}},
                  mm(0)}};
  const Wrap wrap = test::wraps_of(job)[0];
  CHECK(wrap.run().corners.size() == 4);
  CHECK(wrap.run().sides.size() == 5);
  // Front line: the frame's outline less the opening of 12 in, and 3 1/4 in twice at each corner.
  CHECK(wrap.run().length / 25.4 == doctest::Approx(2 * 28 + 2 * 30 - 12 + 8 * 3.25));
  const auto gaps = gaps_between(wrap.frame(), wrap.section(), {wrap.run()}, job.places);
  REQUIRE(gaps.has_value());
  CHECK((*gaps)[0] / 25.4 == doctest::Approx(12.0));
}

TEST_CASE("what cannot be run is refused at its key") {
  Job job = test::worked_job();
  job.places.set("bumper.0.from", {"job.toml", 20, 8});
  job.places.set("bumper.0", {"job.toml", 19, 1});
  job.places.set("bumper.1", {"job.toml", 29, 1});

  SUBCASE("a corner turned with less than the bumper's own depth left") {
    job.bumpers[0].from = {"front", FromCorner{inches(26), "right"}};
    job.bumpers[1].to = {"front", FromCorner{inches(26), "right"}};
    const Refusals faults = refused(job);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].why == Why::DoesNotFit);
    CHECK(faults[0].place.line == 20);
    // What it says to give is the most that runs: 1/16 in more is refused again.
    const std::string& sentence = faults[0].sentence;
    const std::string before = "give at most [\"front\", \"";
    const auto at = sentence.find(before);
    REQUIRE(at != std::string::npos);
    const auto value = at + before.size();
    const auto most =
        parse_length(sentence.substr(value, sentence.find('"', value) - value), Units::Inches);
    CHECK(sentence.find("the side front is 28 in long") != std::string::npos);
    CHECK(sentence.ends_with(", \"right\"]"));
    REQUIRE(most.has_value());
    for (RunEnd* end : {&job.bumpers[0].from, &job.bumpers[1].to})
      *end = {"front", FromCorner{*most, "right"}};
    CHECK(test::wraps_of(job).size() == 2);
    for (RunEnd* end : {&job.bumpers[0].from, &job.bumpers[1].to})
      *end = {"front", FromCorner{*most + inches(1.0 / 16), "right"}};
    CHECK(refused(job).size() == 1);
  }
  SUBCASE("beyond the side") {
    job.bumpers[0].from = {"front", FromCorner{inches(29), "left"}};
    const Refusals faults = refused(job);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].sentence ==
          "29 in is not on side \"front\": the side is 28 in long, give at most [\"front\", \"28 "
          "in\", "
          "\"left\"]");
    CHECK(faults[0].why == Why::OutOfRange);
    CHECK(faults[0].place.line == 20);
  }
  SUBCASE("bumpers that overlap") {
    job.bumpers[1].to = {"front", FromCorner{inches(20), "right"}};
    const Refusals faults = refused(job);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].why == Why::DoesNotFit);
    CHECK(faults[0].place.line == 29);
    // A begins at the middle, 14 in, and 1/4 in is taken off each end.
    CHECK(
        faults[0].sentence ==
        "bumper \"B\" overlaps bumper \"A\" by 5 1/2 in along the side front, from 14 1/4 in to 19 "
        "3/4 in from the corner with \"right\", expected a gap: give to = [\"front\", \"14 in\", "
        "\"right\"] (a bumper goes counter-clockwise seen from above, from its \"from\" to its "
        "\"to\")");
    REQUIRE(faults[0].mend.size() == 1);
    CHECK(faults[0].mend[0].key == "bumper.2.to");
    job.bumpers[1].to = {"front", FromCorner{inches(14), "right"}};
    CHECK(test::wraps_of(job).size() == 2);
  }
  SUBCASE("an inside corner") {
    job.frame.corners = {{700, 700}, {350, 700}, {350, 400}, {0, 400}, {0, 0}, {700, 0}};
    job.frame.sides = {"front", "step", "ledge", "left", "back", "right"};
    job.bumpers = {test::half("A", "step", "back")};
    const Refusals faults = refused(job);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].why == Why::ReflexCorner);
    CHECK(faults[0].place.line == 19);
  }
  SUBCASE("a straight corner, which is none") {
    job.frame.corners = {{700, 700}, {350, 700}, {0, 700}, {0, 0}, {700, 0}};
    job.frame.sides = {"front", "more front", "left", "back", "right"};
    job.places.set("frame.corners.1", {"job.toml", 9, 25});
    job.bumpers = {test::half("A", "front", "back")};
    const Refusals faults = refused(job);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].why == Why::DoesNotFit);
    CHECK(faults[0].place.column == 25);
    CHECK(faults[0].sentence.find("straight") != std::string::npos);
    CHECK(faults[0].sentence.find("\"more front\" out of frame.sides") != std::string::npos);
    job.bumpers[0].from = {"more front", RunEnd::Share{0.5}};  // beyond it, it is in nobody's way
    CHECK(test::wraps_of(job)[0].run().corners.size() == 2);
    job.bumpers[0].from = {"more front", RunEnd::Corner{}};
    CHECK(refused(job)[0].sentence.find("has no corner at this end") != std::string::npos);
  }
  SUBCASE("a frame that crosses itself, or runs clockwise") {
    job.places.set("frame.corners", {"job.toml", 9, 11});
    std::swap(job.frame.corners[1], job.frame.corners[2]);
    CHECK(refused(job)[0].place.line == 9);
    job.frame.corners = {{700, 0}, {0, 0}, {0, 700}, {700, 700}};
    CHECK(refused(job)[0].why == Why::DoesNotFit);
  }
}

TEST_CASE("long and short: a 1 mm chamfer, a 10 m side, a 179 degree corner") {
  Job job = test::worked_job();
  job.padding.corner = PaddingCorner::Mitred;
  job.boards.joint = Joint::Mitred;
  SUBCASE("a 1 mm chamfer") {
    const double c = 1.0 / std::sqrt(2.0);
    job.frame.corners = {{700, 700}, {c, 700}, {0, 700 - c}, {0, 0}, {700, 0}};
    job.frame.sides = {"front", "chamfer", "left", "back", "right"};
    const std::vector<Wrap> wraps = test::wraps_of(job);
    CHECK(wraps[0].run().corners.size() == 3);
    CHECK(wraps[0].run().corners[0].turn == doctest::Approx(degrees(45).radians()));
  }
  SUBCASE("a 10 m side") {
    job.frame = test::rectangle_frame(10000, 762);
    job.frame.fit = mm(0);
    CHECK(test::wraps_of(job)[0].run().length / 25.4 ==
          doctest::Approx(10000 / 25.4 + 30 + 4 * 3.25 - 0.5));
  }
  SUBCASE("a 179 degree corner") {
    job.frame.corners = {
        {700, 700}, {350, 700 + 350 * std::tan(degrees(1).radians())}, {0, 700}, {0, 0}, {700, 0}};
    job.frame.sides = {"front", "front-left", "left", "back", "right"};
    CHECK(refused(job).empty());
  }
}

}  // namespace
}  // namespace swathe
