#include <fmt/format.h>

#include <algorithm>
#include <cassert>

#include "base/embedded.hpp"
#include "job/keys.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

constexpr std::string_view kCommented = "# ";
constexpr char kKeyMark = '@';  // where new-job.toml has a key: "@flap", "# @flap"

std::string_view take_line(std::string_view& text) {
  const std::string_view line = text.substr(0, text.find('\n'));
  text.remove_prefix(std::min(line.size() + 1, text.size()));
  return line;
}

/// A line that shows a key or a table, with the mark of a comment before it or without.
std::string_view shown(std::string_view line) {
  if (line.starts_with(kCommented)) line.remove_prefix(kCommented.size());
  return line;
}

/// "cloth" of "[cloth]", "bumper" of "[[bumper]]"; nothing of any other line.
std::string_view table_in(std::string_view line) {
  line = shown(line);
  if (!line.starts_with('[')) return {};
  const auto first = line.find_first_not_of('[');
  return line.substr(first, line.find(']') - first);
}

/// "flap = "2 in"   # what it means", the meanings below each other where there is room.
std::string key_line(std::string_view mark, std::string_view table, std::string_view name) {
  constexpr std::size_t kMeanings = 40;  // the column where they begin
  const Key* key = find_key(fmt::format("{}.{}", table, name));
  assert(key && "new-job.toml is our own file");
  std::string line = fmt::format("{}{} = {}", mark, name, key->value);
  if (line.size() < kMeanings)
    line.resize(kMeanings, ' ');
  else
    line += "   ";
  return fmt::format("{}# {}", line, key->meaning);
}

std::string filled_in(std::string_view text) {
  std::string out;
  std::string_view table;
  while (!text.empty()) {
    const std::string_view line = take_line(text);
    if (const std::string_view name = table_in(line); !name.empty()) table = name;
    const std::string_view key = shown(line);
    if (key.starts_with(kKeyMark))
      out += key_line(line.substr(0, line.size() - key.size()), table, key.substr(1));
    else
      out += line;
    out += '\n';
  }
  return out;
}

}  // namespace

std::string_view new_job_text() {
  static const std::string text = filled_in(embedded("job/new-job.toml"));
  return text;
}

std::vector<KeyWords> key_words() {
  std::vector<KeyWords> all;
  for (const Key& key : job_keys())
    all.push_back({std::string(key.path), key.value, key.meaning, key.why, key.given});
  return all;
}

}  // namespace swathe
