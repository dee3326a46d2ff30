#include "sheet/file_names.hpp"

#include <doctest/doctest.h>

#include <set>

#include "support/made_by_hand.hpp"

namespace swathe {
namespace {

TEST_CASE("file names: only letters, digits, - and _, never a leading dash, never empty") {
  CHECK(file_safe("A") == "A");
  CHECK(file_safe("left half") == "left_half");
  CHECK(file_safe("../a:b*c") == "___a_b_c");
  CHECK(file_safe("-rf") == "_rf");
  CHECK(file_safe("") == "_");
  CHECK(file_safe(std::string(500, 'x')).size() == 64);
}

TEST_CASE("file names: bumpers whose names become one are told apart") {
  Job job = test::demo_job();
  job.number.clear();
  job.brackets.clear();
  job.bumpers[0].name = "a b";
  job.bumpers[1].name = "A_b";
  const Made made = test::made_by_hand(job);
  CHECK(stem_of(made, 0, "measures") == "a_b-1-measures");
  CHECK(stem_of(made, 1, "measures") == "A_b-2-measures");
  job.bumpers[1].name = "C";
  CHECK(stem_of(test::made_by_hand(job), 1, "measures") == "C-measures");
}

}  // namespace
}  // namespace swathe
