#include "swathe/job/new_job.hpp"

#include <algorithm>
#include <cassert>

#include "job/names.hpp"
#include "swathe/base/embedded.hpp"

namespace swathe {
namespace {

constexpr std::string_view kWhyMark = "#:";
constexpr Word<Given> kGivenWords[] = {
    {"default", Given::Default}, {"needed", Given::Needed}, {"optional", Given::Optional}};

std::string_view take_line(std::string_view& text) {
  const std::string_view line = text.substr(0, text.find('\n'));
  text.remove_prefix(std::min(line.size() + 1, text.size()));
  return line;
}

/// A line that shows a key or a table, with the mark of a comment before it or without.
std::string_view shown(std::string_view line) {
  if (line.starts_with("# ")) line.remove_prefix(2);
  return line;
}

/// "cloth" of "[cloth]", "bumper" of "[[bumper]]"; nothing of any other line.
std::string_view table_in(std::string_view line) {
  line = shown(line);
  if (!line.starts_with('[')) return {};
  const auto first = line.find_first_not_of('[');
  return line.substr(first, line.find(']') - first);
}

/// "flap = "2 in"   # what it means"; no key where the line is none.
KeyWords key_in(std::string_view line, std::string_view table) {
  line = shown(line);
  constexpr std::string_view kIs = " = ", kComment = "  # ";
  const std::string_view name = line.substr(0, line.find(kIs));
  const bool is_key = name.size() < line.size() && std::ranges::all_of(name, [](char c) {
                        return (c >= 'a' && c <= 'z') || c == '_';
                      });
  if (!is_key) return {};
  line.remove_prefix(name.size() + kIs.size());
  const auto comment = line.find(kComment);
  KeyWords words;
  words.key = std::string(table) + "." + std::string(name);
  words.value = line.substr(0, comment);
  words.value = words.value.substr(0, words.value.find_last_not_of(' ') + 1);
  if (comment != std::string_view::npos) words.meaning = line.substr(comment + kComment.size());
  return words;
}

/// "#: default. The pattern is drawn so much shorter."
void add_why(KeyWords& words, std::string_view line) {
  line.remove_prefix(kWhyMark.size() + 1);
  const auto dot = line.find(". ");
  const auto given = std::ranges::find(kGivenWords, line.substr(0, dot), &Word<Given>::text);
  assert(given != std::end(kGivenWords) && dot != std::string_view::npos &&
         "new-job.toml is our own file");
  words.given = given->value;
  words.why = line.substr(dot + 2);
}

std::string without_whys(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const std::string_view line = take_line(text);
    if (!line.starts_with(kWhyMark)) out.append(line).append("\n");
  }
  return out;
}

}  // namespace

std::string_view new_job_text() {
  static const std::string text = without_whys(embedded("job/new-job.toml"));
  return text;
}

std::vector<KeyWords> key_words() {
  std::vector<KeyWords> all;
  std::string_view text = embedded("job/new-job.toml"), table;
  KeyWords last;
  while (!text.empty()) {
    const std::string_view line = take_line(text);
    if (line.starts_with(kWhyMark)) {
      if (last.key.empty()) continue;  // words on the file itself
      add_why(last, line);
      all.push_back(std::move(last));
      last = {};
    } else if (const std::string_view name = table_in(line); !name.empty()) {
      table = name;
    } else if (KeyWords words = key_in(line, table); !words.key.empty()) {
      last = std::move(words);
    }
  }
  return all;
}

}  // namespace swathe
