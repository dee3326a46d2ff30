#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "base/limits.hpp"
#include "base/nearest.hpp"
#include "base/print.hpp"
#include "base/toml_text.hpp"
#include "rules/read_value.hpp"
#include "rules/season_keys.hpp"
#include "swathe/rules.hpp"

namespace swathe {
namespace {

using Names = std::vector<std::string_view>;

/// Reads one file; keeps every fault it meets.
class Reader {
 public:
  explicit Reader(const PlaceFinder& places) : places_(places) {}

  Outcome<Season> read(const toml::table& root) {
    Season season;
    read_head(root, season);
    know_keys(root, season);
    each_value(season, [&](std::string_view table, std::string_view key, const char*, auto& value) {
      const toml::table* values = root[table].as_table();
      const toml::node* node = values ? values->get(key) : nullptr;
      if (node) read_entry(*node, fmt::format("{}.{}", table, key), value);
    });
    if (faults_.empty()) return season;
    std::ranges::stable_sort(
        faults_, {}, [](const Refusal& r) { return std::tuple(r.place.line, r.place.column); });
    return tl::unexpected(std::move(faults_));
  }

 private:
  void fault(Why why, std::string sentence, const toml::source_region& source) {
    faults_.push_back({why, std::move(sentence), places_.at(source)});
  }

  /// "NAME is VALUE, expected EXPECTED"
  void wrong(const toml::node& node, std::string_view name, std::string_view expected) {
    fault(Why::WrongType, fmt::format("{} is {}, expected {}", name, described(node), expected),
          node.source());
  }

  void read_head(const toml::table& root, Season& season) {
    if (const toml::node* name = root.get("season"))
      season.name = text_of(*name, "season", kMostSeasonName).value_or("");
    else
      faults_.push_back({Why::Missing,
                         fmt::format("season is missing, expected the season's name, like \"{}\"",
                                     newest_season()),
                         Place{places_.file(), 1, 1}});
    if (const toml::node* section = root.get("section"))
      season.section = text_of(*section, "section", kMostRuleName).value_or("");
  }

  /// Every table and key of the file is one that a season may have.
  void know_keys(const toml::table& root, const Season& season) {
    std::map<std::string_view, Names> known;
    Names top = {"season", "section"};
    each_value(season, [&](std::string_view table, std::string_view key, const char*, const auto&) {
      if (known[table].empty()) top.push_back(table);
      known[table].push_back(key);
    });
    for (const auto& [key, node] : root) {
      const auto found = known.find(key.str());
      if (found == known.end()) {
        if (key.str() != "season" && key.str() != "section") unknown(key, "", top);
      } else if (const toml::table* values = node.as_table()) {
        for (const auto& [inner, value] : *values) {
          if (std::ranges::find(found->second, inner.str()) == found->second.end()) {
            unknown(inner, fmt::format("{}.", key.str()), found->second);
          }
        }
      } else {
        wrong(node, clip(key.str()), fmt::format("the table [{}]", clip(key.str())));
      }
    }
  }

  void unknown(const toml::key& key, const std::string& before, const Names& known) {
    fault(Why::UnknownKey,
          fmt::format("unknown key \"{}{}\", the nearest known one is \"{}{}\"", before,
                      clip(key.str()), before, nearest_name(key.str(), known)),
          key.source());
  }

  std::optional<std::string> text_of(const toml::node& node, const std::string& name) {
    if (auto text = node.value_exact<std::string>()) return text;
    wrong(node, name, "a string");
    return std::nullopt;
  }
  /// Of 1 to `most` characters: it stands on sheets.
  std::optional<std::string> text_of(const toml::node& node, const std::string& name, int most) {
    auto text = text_of(node, name);
    if (!text) return text;
    if (const auto code = first_unprintable(*text)) {
      faults_.push_back({Why::OutOfRange,
                         fmt::format("{} has the character {}, which cannot be printed, expected 1 "
                                     "to {} printable characters",
                                     name, code_words(*code), most),
                         places_.of_character(node.source(), *code)});
      return std::nullopt;
    }
    const int characters = characters_in(*text);
    if (characters >= 1 && characters <= most) return text;
    fault(
        Why::OutOfRange,
        fmt::format("{} is \"{}\", expected 1 to {} printable characters", name, clip(*text), most),
        node.source());
    return std::nullopt;
  }

  /// `{ value = ..., rule = "R1", attested = "official", guideline = false }`.
  template <class T>
  void read_entry(const toml::node& node, const std::string& name, Ruled<T>& out) {
    const toml::table* entry = node.as_table();
    if (!entry) {
      wrong(node, name, "{ value = ..., rule = \"...\", attested = \"...\" }");
      return;
    }
    const Names known = {"value", "rule", "attested", "guideline"};
    for (const auto& [key, value] : *entry) {
      if (std::ranges::find(known, key.str()) == known.end()) unknown(key, name + ".", known);
    }
    RuleValue<T> read;
    if (const auto* rule = must_have(*entry, "rule", name)) {
      read.rule = text_of(*rule, name + ".rule", kMostRuleName).value_or("");
    }
    if (const auto* grade = must_have(*entry, "attested", name)) {
      if (const auto text = text_of(*grade, name + ".attested")) {
        take(rule_attested(*text), read.attested, *grade, name + ".attested",
             "\"official\", \"inferred\", \"quoted\" or \"unverified\"");
      }
    }
    if (const toml::node* guideline = entry->get("guideline")) {
      read_value(*guideline, name + ".guideline", read.guideline);
    }
    if (const auto* value = must_have(*entry, "value", name)) {
      read_value(*value, name + ".value", read.value);
    }
    out = std::move(read);
  }

  const toml::node* must_have(const toml::table& entry, std::string_view key,
                              const std::string& name) {
    const toml::node* node = entry.get(key);
    if (!node) {
      fault(Why::Missing,
            fmt::format("{}.{} is missing, expected value, rule and attested", name, key),
            entry.source());
    }
    return node;
  }

  template <class T>
  void take(std::optional<T> read, T& out, const toml::node& node, const std::string& name,
            std::string_view expected) {
    if (read) {
      out = std::move(*read);
    } else {
      fault(Why::OutOfRange,
            fmt::format("{} is \"{}\", expected {}", name, clip(node.value_or(std::string())),
                        expected),
            node.source());
    }
  }

  void read_value(const toml::node& node, const std::string& name, bool& out) {
    if (const auto value = node.value_exact<bool>()) {
      out = *value;
    } else {
      wrong(node, name, "true or false");
    }
  }
  void read_value(const toml::node& node, const std::string& name, int& out) {
    const auto value = node.value_exact<std::int64_t>();
    if (!value) {
      wrong(node, name, "a whole number, 1 to 1000");
    } else if (*value < 1 || *value > 1000) {
      fault(Why::OutOfRange, fmt::format("{} is {}, expected 1 to 1000", name, *value),
            node.source());
    } else {
      out = static_cast<int>(*value);
    }
  }
  void read_value(const toml::node& node, const std::string& name, Length& out) {
    if (const auto text = text_of(node, name)) {
      take(rule_length(*text), out, node, name, "a length with its unit, like \"3 3/4 in\"");
    }
  }
  void read_value(const toml::node& node, const std::string& name, Angle& out) {
    if (const auto text = text_of(node, name)) {
      take(rule_angle(*text), out, node, name, "an angle up to 180 deg, like \"135 deg\"");
    }
  }
  void read_value(const toml::node& node, const std::string& name, rules::Mass& out) {
    if (const auto text = text_of(node, name)) {
      take(rule_mass(*text), out, node, name, "a weight with its unit, like \"15 lb\"");
    }
  }
  void read_value(const toml::node& node, const std::string& name, Viewpoints& out) {
    if (const auto text = text_of(node, name)) {
      take(rule_viewpoints(*text), out, node, name, "\"most\" or \"every\"");
    }
  }
  void read_value(const toml::node& node, const std::string& name, rules::Zone& out) {
    const toml::array* ends = node.as_array();
    if (!ends || ends->size() != 2) {
      wrong(node, name, "a pair of heights, like [\"0 in\", \"7 1/2 in\"]");
      return;
    }
    const auto before = faults_.size();
    read_value((*ends)[0], name, out.from);
    read_value((*ends)[1], name, out.to);
    if (faults_.size() == before && !(out.from < out.to)) {
      fault(Why::OutOfRange,
            fmt::format("{} goes from {} to {}, expected the lower height first", name,
                        in_words(out.from), in_words(out.to)),
            node.source());
    }
  }
  void read_value(const toml::node& node, const std::string& name, std::vector<std::string>& out) {
    const toml::array* list = node.as_array();
    if (!list || list->empty()) {
      wrong(node, name, "a list of names, like [\"red\", \"blue\"]");
      return;
    }
    if (list->size() > static_cast<std::size_t>(kMostSets))
      return fault(
          Why::TooLarge,
          fmt::format("{} is a list of {}, expected at most {}", name, list->size(), kMostSets),
          node.source());
    for (const toml::node& item : *list)
      if (auto text = text_of(item, name, kMostRuleName)) out.push_back(std::move(*text));
  }

  const PlaceFinder& places_;
  Refusals faults_;
};

}  // namespace

Season::Season() = default;
Season::Season(const Season&) = default;
Season::Season(Season&&) noexcept = default;
Season& Season::operator=(const Season&) = default;
Season& Season::operator=(Season&&) noexcept = default;
Season::~Season() = default;

Outcome<Season> read_season(std::string_view text, const std::string& file) {
  text = without_byte_order_mark(text);
  const PlaceFinder places(text, file);
  const auto root = parse_toml(text, places, "the rule file", kMostRuleBytes);
  if (!root) return tl::unexpected(root.error());
  return Reader(places).read(*root);
}

}  // namespace swathe
