#include "job/spelling.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "job/keys.hpp"

namespace swathe {
namespace {

struct Pair {
  std::string_view british, american;
};
constexpr Pair kPairs[] = {{"colour", "color"},  // British, then American
                           {"centre", "center"}};

std::string replaced(std::string_view name, std::string_view Pair::*from,
                     std::string_view Pair::*to) {
  std::string out(name);
  for (const Pair& pair : kPairs)
    if (const auto at = out.find(pair.*from); at != std::string::npos)
      out.replace(at, (pair.*from).size(), pair.*to);
  return out;
}

void spell_below(toml::table& table, const std::string& path);

/// The table or tables at a key, where there are any.
void spell_inside(toml::node& node, const std::string& path) {
  if (toml::table* const table = node.as_table()) return spell_below(*table, path);
  if (toml::array* const list = node.as_array())
    for (toml::node& item : *list)
      if (toml::table* const table = item.as_table()) spell_below(*table, path);
}

void spell_below(toml::table& table, const std::string& path) {
  std::vector<std::pair<toml::key, std::string>> to_rename;
  for (const auto& [key, node] : table) {
    std::string name = american(key.str());
    const bool described = find_key(path + name) != nullptr;
    if (name != key.str() && described && !table.contains(name))
      to_rename.emplace_back(key, std::move(name));
  }
  for (const auto& [key, name] : to_rename) {
    table.insert(toml::key(name, key.source()), std::move(*table.get(key.str())));
    table.erase(key.str());
  }
  // Only into the tables that a job has: what else a text nests may be deep.
  for (auto&& [key, node] : table) {
    const std::string inner = path + std::string(key.str());
    if (std::ranges::count(job_tables(), inner, &KeyTable::path) > 0)
      spell_inside(node, inner + ".");
  }
}

}  // namespace

std::string american(std::string_view name) {
  return replaced(name, &Pair::british, &Pair::american);
}

std::string british(std::string_view name) {
  return replaced(name, &Pair::american, &Pair::british);
}

bool same_name(std::string_view a, std::string_view b) {
  return a == b || american(a) == american(b);
}

bool same_but_for_case(std::string_view a, std::string_view b) {
  const auto small = [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  };
  return std::ranges::equal(a, b, {}, small, small);
}

void spell_as_in_america(toml::table& root) { spell_below(root, ""); }

}  // namespace swathe
