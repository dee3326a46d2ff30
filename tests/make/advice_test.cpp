#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "support/jobs.hpp"
#include "support/made.hpp"
#include "swathe/write.hpp"

// A pass that is asked for no advice: all but the words is the same.
namespace swathe {
namespace {

using Json = nlohmann::ordered_json;

/// How many advices with words a report has; each is emptied.
int take_advice(Json& report) {
  int taken = 0;
  if (report.is_object() && report.contains("advice") && report["advice"].is_string()) {
    taken += report["advice"].get<std::string>().empty() ? 0 : 1;
    report["advice"] = "";
    if (report.contains("mend")) {
      taken += report["mend"].empty() ? 0 : 1;
      report["mend"] = Json::array();
    }
  }
  if (report.is_structured())
    for (Json& inner : report) taken += take_advice(inner);
  return taken;
}

/// A job made with advice, after it was found the same without.
Made same_without_advice(const Job& job) {
  auto with = make(job);
  const auto without = make(job, {}, {.advice = false});
  REQUIRE_MESSAGE(with.has_value(), to_text(with.error().front()));
  REQUIRE(without.has_value());
  Json whole = Json::parse(report_json(*with, {})), bare = Json::parse(report_json(*without, {}));
  CHECK(take_advice(whole) > 0);
  CHECK(take_advice(bare) == 0);
  CHECK(whole.dump() == bare.dump());
  if (without->sight) CHECK(without->sight->advice.empty());
  return *std::move(with);
}

TEST_CASE("without advice a job comes to the same but for advice's words") {
  Job job = test::c_halves(28 * 25.4, 30 * 25.4);
  job.number = "20486";
  // A number that is shown once is not read from all round.
  job.numerals.sides = {"front"};
  CHECK_FALSE(same_without_advice(job).sight->advice.empty());
  // Digits too wide for their sides.
  job.numerals.height = mm(260);
  const Made wide = same_without_advice(job);
  REQUIRE_FALSE(wide.numerals->misfits.empty());
  CHECK_FALSE(wide.numerals->misfits.front().advice.empty());
}

TEST_CASE("without advice a job at fault has the same faults") {
  Job job = test::c_halves(28 * 25.4, 30 * 25.4);
  job.number = "20486";
  job.numerals.outline = mm(20);  // neighbors' outlines meet
  const auto with = make(job), without = make(job, {}, {.advice = false});
  REQUIRE_FALSE(with.has_value());
  REQUIRE_FALSE(without.has_value());
  REQUIRE(with.error().size() == without.error().size());
  for (std::size_t i = 0; i < with.error().size(); ++i)
    CHECK(to_text(with.error()[i]) == to_text(without.error()[i]));
}

}  // namespace
}  // namespace swathe
