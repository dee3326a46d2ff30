#include <cassert>
#include <string_view>

#include "base/embedded.hpp"
#include "base/toml.hpp"
#include "check/check_id.hpp"
#include "swathe/check.hpp"

namespace swathe {

std::vector<CheckWords> check_words() {
  const toml::table table = toml::parse(embedded("check/checks.toml"));
  std::vector<CheckWords> all;
  for (const std::string_view id : kCheckIds) {
    const auto words = table[id];
    assert(words["asks"] && words["why"] && "checks.toml is our own file");
    all.push_back({std::string(id), words["asks"].value_or(std::string()),
                   words["why"].value_or(std::string())});
  }
  return all;
}

}  // namespace swathe
