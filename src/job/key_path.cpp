#include "job/key_path.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <span>

#include "base/nearest.hpp"
#include "base/print.hpp"
#include "base/toml_layout.hpp"
#include "base/toml_text.hpp"
#include "job/spelling.hpp"

namespace swathe {
namespace {

/// "2" of "bumper.2.from".
std::optional<std::size_t> number_in(std::string_view part) {
  std::size_t number = 0;
  const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), number);
  if (error != std::errc() || end != part.data() + part.size()) return std::nullopt;
  return number;
}

std::string nearest_key(std::string_view text, std::size_t number) {
  std::vector<std::string> names;
  for (const Key& key : job_keys()) names.push_back(with_number(key.path, number));
  return std::string(nearest_name(text, {names.begin(), names.end()}));
}

bool is_same_path(std::string_view known, const std::vector<std::string>& names) {
  for (const std::string& name : names) {
    const std::string_view part = known.substr(0, known.find('.'));
    if (part.empty() || !same_name(part, name)) return false;
    known.remove_prefix(std::min(part.size() + 1, known.size()));
  }
  return known.empty();
}

const Key* key_of(const std::vector<std::string>& names) {
  for (const Key& key : job_keys())
    if (is_same_path(key.path, names)) return &key;
  return nullptr;
}

std::string_view table_of(const std::vector<std::string>& names) {
  for (const KeyTable& table : job_tables())
    if (is_same_path(table.path, names)) return table.path;
  return {};
}

bool is_table(const Holds& holds) {
  return std::holds_alternative<OfColors>(holds) || std::holds_alternative<OfAxes>(holds);
}

/// What stands behind a key's own path: a name in its table, or places in its list.
std::optional<KeyPath> inside(const Key& key, std::span<const std::string> parts) {
  KeyPath path;
  for (const std::string& part : parts) {
    const auto number = number_in(part);
    if (is_table(key.holds) && path.empty())
      path.emplace_back(part);
    else if (!is_table(key.holds) && number && *number > 0)
      path.emplace_back(*number - 1);
    else
      return std::nullopt;
  }
  return path;
}

void add_names(KeyPath& path, std::string_view known) {
  path.emplace_back(std::string(known.substr(known.rfind('.') + 1)));
}

}  // namespace

std::string_view first_key_in(std::string_view table) {
  for (const Key& key : job_keys())
    if (key.path.starts_with(table) && key.path[table.size()] == '.') return key.path;
  return {};
}

std::string with_number(std::string_view path, std::size_t number) {
  std::string out;
  std::size_t end = 0;
  while (end < path.size()) {
    const std::size_t dot = std::min(path.find('.', end), path.size());
    out += path.substr(end, dot - end);
    if (is_list_of_tables(path.substr(0, dot))) out += fmt::format(".{}", number);
    if (dot < path.size()) out += '.';
    end = dot + 1;
  }
  return out;
}

std::vector<std::string> key_parts(std::string_view text) {
  const std::string pair = std::string(text) + " = 0";
  if (!parse_toml(pair, PlaceFinder(pair, ""), "the key", kMostJobBytes)) return {};
  const auto sections = lay_out(pair);
  const bool one = sections.size() == 1 && sections[0].pairs.size() == 1 &&
                   sections[0].pairs[0].at.begin == 0 && sections[0].pairs[0].at.end == pair.size();
  return one ? sections[0].pairs[0].key : std::vector<std::string>();
}

Outcome<NamedKey> read_key_path(std::string_view text, const std::string& file) {
  const Place top{file, 1, 1};
  const auto parts = key_parts(text);
  std::size_t number = 1;
  for (const std::string& part : parts) number = number_in(part).value_or(number);
  const auto unknown = [&] {
    return refuse(Why::UnknownKey,
                  fmt::format("{} is not a key of a job, the nearest known one is {}", clip(text),
                              nearest_key(text, number)),
                  top);
  };
  NamedKey named;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    names.push_back(parts[i]);
    if (const Key* key = key_of(names)) {
      add_names(named.path, key->path);
      const auto rest = inside(*key, std::span(parts).subspan(i + 1));
      if (!rest) return unknown();
      named.path.insert(named.path.end(), rest->begin(), rest->end());
      named.key = key;
      named.whole = rest->empty();
      return named;
    }
    const std::string_view table = table_of(names);
    if (table.empty()) return unknown();
    add_names(named.path, table);
    const std::string example = with_number(first_key_in(table), number);
    if (is_list_of_tables(table)) {
      const auto place = i + 1 < parts.size() ? number_in(parts[i + 1]) : std::nullopt;
      if (!place || *place < 1)
        return refuse(Why::WrongType,
                      fmt::format("{} may be there many times, expected its number from 1 on, "
                                  "like {}",
                                  table, example),
                      top);
      named.path.emplace_back(*place - 1);
      if (++i + 1 == parts.size()) return named;
    }
    if (i + 1 == parts.size())
      return refuse(
          Why::WrongType,
          fmt::format("{} is a table, expected one of its keys, like {}", clip(text), example),
          top);
  }
  return unknown();
}

std::string quoted_text(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\')
      out.append({'\\', c});
    else if (code < 0x20 || code == 0x7f)
      out += fmt::format("\\u{:04x}", code);
    else
      out += c;
  }
  return out + "\"";
}

std::string key_part(std::string_view name) {
  const bool bare = !name.empty() && std::ranges::all_of(name, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           c == '-';
  });
  return bare ? std::string(name) : quoted_text(name);
}

std::string to_text(const KeyPath& path) {
  std::string out;
  for (const PathStep& step : path) {
    if (!out.empty()) out += '.';
    if (const auto* name = std::get_if<std::string>(&step))
      out += key_part(*name);
    else
      out += fmt::format("{}", std::get<std::size_t>(step) + 1);
  }
  return out;
}

}  // namespace swathe
