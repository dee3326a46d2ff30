#include <doctest/doctest.h>

#include <algorithm>

#include "support/checked.hpp"
#include "support/jobs.hpp"

// Distances between brackets and what they would meet: worked by hand on a 30 in side. Common
// practice, no source.
namespace swathe {
namespace {

BracketKeys bracket(double at_in, const char* corner = "front") {
  BracketKeys keys;
  keys.side = "left";
  keys.at = FromCorner{inches(at_in), corner};
  keys.width = inches(2);
  keys.height = inches(1.5);
  return keys;
}

std::vector<Finding> about_brackets(const Job& job) {
  return test::of(test::made(job).by(nullptr), "bracket");
}

TEST_CASE("a bracket clear of everything is no finding") {
  Job job = test::worked_job();
  job.brackets = {bracket(5), bracket(5, "back")};
  CHECK(about_brackets(job).empty());
}

TEST_CASE("a bracket at a corner joint is found with its distance") {
  Job job = test::worked_job();
  job.brackets = {bracket(0.125), bracket(0, "back")};
  const auto found = about_brackets(job);
  REQUIRE(found.size() == 2);
  CHECK(found[0].measured == "1/8 in");
  CHECK(found[0].verdict == Verdict::Warn);
  CHECK(found[1].measured == "0 in");
}

TEST_CASE("two brackets nearer than their clearance") {
  Job job = test::worked_job();
  job.brackets = {bracket(5), bracket(7.1)};
  const auto found = about_brackets(job);
  REQUIRE(found.size() == 1);
  CHECK(found[0].measured == "1/8 in");
}

TEST_CASE("a bracket half on cloth and half on wood; a window sits on wood alone") {
  Job job = test::worked_job();
  job.brackets = {bracket(5)};
  job.brackets[0].height = inches(3);  // the flap is 2 in: 1 in of the 3 lies bare
  auto found = about_brackets(job);
  REQUIRE(found.size() == 1);
  CHECK(found[0].measured == "1 in of its height on bare board");
  job.brackets[0].cloth = BracketCloth::Window;
  CHECK(about_brackets(job).empty());
}

}  // namespace
}  // namespace swathe
