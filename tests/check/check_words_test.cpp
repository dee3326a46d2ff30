#include <doctest/doctest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <set>

#include "base/embedded.hpp"
#include "base/toml.hpp"
#include "check/check_id.hpp"
#include "swathe/check.hpp"

using namespace swathe;

// That no check writes an id outside kCheckIds, the compiler sees to: CheckResult holds a CheckId.
TEST_CASE("check words: each id has words, and no words are of no id") {
  std::set<std::string> ids(std::begin(kCheckIds), std::end(kCheckIds)), told;
  for (const CheckWords& words : check_words()) {
    CAPTURE(words.id);
    CHECK(!words.asks.empty());
    CHECK(words.why.ends_with('.'));
  }
  for (const auto& [id, words] : toml::parse(embedded("check/checks.toml")))
    told.insert(std::string(id.str()));
  CHECK(told == ids);
}

TEST_CASE("check words: the report's schema knows the same ids") {
  std::ifstream in(SWATHE_SOURCE "/tests/schema/report.schema.json");
  const auto schema = nlohmann::json::parse(in);
  const auto listed = schema.at("/properties/checks/items/properties/id/enum"_json_pointer)
                          .get<std::set<std::string>>();
  CHECK(listed == std::set<std::string>(std::begin(kCheckIds), std::end(kCheckIds)));
}
