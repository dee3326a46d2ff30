#include <fmt/format.h>

#include <algorithm>
#include <cassert>

#include "base/embedded.hpp"
#include "base/print.hpp"
#include "rules/read_value.hpp"
#include "rules/season_keys.hpp"
#include "swathe/rules.hpp"

namespace swathe {
namespace {

constexpr std::string_view kRoom = "rules/";
constexpr std::string_view kEnding = ".toml";

std::string file_of(std::string_view name) { return fmt::format("{}{}{}", kRoom, name, kEnding); }

}  // namespace

std::vector<std::string> season_names() {
  std::vector<std::string> names;
  for (const Embedded& file : all_embedded()) {
    if (!file.name.starts_with(kRoom) || !file.name.ends_with(kEnding)) continue;
    const auto name = file.name.substr(kRoom.size());
    names.emplace_back(name.substr(0, name.size() - kEnding.size()));
  }
  std::ranges::sort(names, std::ranges::greater());
  return names;
}

const std::string& newest_season() {
  static const std::string newest = [] {
    const std::vector<std::string> names = season_names();
    assert(!names.empty() && "seasons are built in");
    return names.front();
  }();
  return newest;
}

std::string_view bundled_season_text(std::string_view name) { return embedded(file_of(name)); }

Outcome<Season> bundled_season(std::string_view name) {
  const auto text = bundled_season_text(name);
  if (text.empty()) {
    return refuse(Why::UnknownName,
                  fmt::format("there is no season \"{}\", expected {}, \"none\", or the path of a "
                              "rule file",
                              clip(name), in_words(season_names())));
  }
  return read_season(text, file_of(name));
}

std::vector<SeasonEntry> entries(const Season& season) {
  std::vector<SeasonEntry> list;
  each_value(season,
             [&](std::string_view table, std::string_view key, const char* what, const auto& v) {
               if (!v) return;
               list.push_back({fmt::format("{}.{}", table, key), what, in_words(v->value), v->rule,
                               v->attested, v->guideline});
             });
  return list;
}

}  // namespace swathe
