#include <doctest/doctest.h>

#include <algorithm>

#include "support/made.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

/// The worst of what is not met, in words; empty where no rule fails.
std::string failing(const Made& made) {
  for (const Finding& finding : made.findings)
    if (finding.verdict == Verdict::Fail)
      return finding.id + ": " + finding.subject + ": " + finding.measured;
  return "";
}

}  // namespace

// Over the answers that say most, each with each; the others take turns.
TEST_CASE("new job (1): what is answered makes, nothing is in vain, and no rule fails") {
  const char* const brackets[] = {
      "", "right 4 in from front, 3 in x 2 in",
      "right 4 in from back, 2 in x 2 in; left 3 in from back, 2 in x 2 in"};
  const char* const paddings[] = {"", "1/2 in x 5 in, noodles 2 3/8 in solid",
                                  "18 mm x 127 mm, 64 mm", "3/4 in x 5 in, block 2 1/2 in x 5 in"};
  const char* const papers[] = {"", "a4", "roll 36 in", "tabloid"};
  std::size_t turn = 0, made_of = 0;
  for (const char* const frame :
       {"28 in x 30 in", "26 1/2 in x 32 in", "30 x 24", "700 mm x 760 mm", "33 in x 33 in"})
    for (const char* const opening : {"none", "front 12 in", "left 300 mm", "back 11 in"})
      for (const char* const bumpers : {"1", "2", "4 sides", "4 corners"})
        for (const char* const number : {"none", "7 stencil", "123 iron-on", "20486 sew-on"}) {
          ++turn;
          const std::vector<std::string> answers = {frame,
                                                    opening,
                                                    bumpers,
                                                    brackets[turn % 3],
                                                    paddings[turn / 3 % 4],
                                                    number,
                                                    papers[turn / 2 % 4]};
          const auto text = new_job(answers);
          const bool open = std::string_view(opening) != "none";
          const bool goes = std::string_view(bumpers) == "1"         ? open
                            : std::string_view(bumpers) == "4 sides" ? !open
                                                                     : true;
          std::string all;
          for (const std::string& answer : answers) all += answer + "; ";
          CAPTURE(all);
          CHECK(text.has_value() == goes);
          if (!text) continue;
          ++made_of;
          const Made made = test::made(*text);
          CHECK(made.notices.empty());
          CHECK(failing(made) == "");
        }
  CHECK(made_of > 200);
}

TEST_CASE("new job: each kind makes without its number, and no rule fails") {
  for (const std::string& kind : job_kinds()) {
    CAPTURE(kind);
    const Made made = test::made(new_job_like(kind).value());
    CHECK(made.notices.empty());
    CHECK(failing(made) == "");
  }
}

}  // namespace swathe
