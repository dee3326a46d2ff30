#include "explain.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/nearest.hpp"
#include "commands.hpp"
#include "everyday_words.hpp"
#include "job/keys.hpp"
#include "swathe/check.hpp"
#include "swathe/job.hpp"
#include "table.hpp"

namespace swathe::app {
namespace {

std::string_view given_words(Given given) {
  switch (given) {
    case Given::Needed:
      return "Needed, like";
    case Given::Optional:
      return "Optional, like";
    case Given::Default:
      break;
  }
  return "Default";
}

std::string in_two_lines(const KeyWords& key) {
  return paragraph("", fmt::format("{}: {}", key.key, key.meaning)) +
         paragraph("", fmt::format("{} {}. {}", given_words(key.given), key.value, key.why));
}

std::string in_two_lines(const CheckWords& check) {
  return paragraph("", fmt::format("{}: {}", check.id, check.asks)) + paragraph("", check.why);
}

std::string everything() {
  Table keys({{"key"}, {"what it means", Column::Align::Left, true}});
  for (const KeyWords& key : key_words()) keys.add({key.key, std::string(key.meaning)});
  Table checks({{"check"}, {"what it asks", Column::Align::Left, true}});
  for (const CheckWords& check : check_words()) checks.add({check.id, check.asks});
  return fmt::format("{}\n{}\nMore about one:  swathe explain cloth.flap\n", keys.to_text(),
                     checks.to_text());
}

/// The keys that are in a table itself, and those of the tables in it.
std::string table_text(const KeyTable& table) {
  Table keys({{"key"}, {"what it means", Column::Align::Left, true}});
  const std::string inside = std::string(table.path) + ".";
  for (const KeyWords& key : key_words())
    if (key.key.starts_with(inside)) keys.add({key.key, std::string(key.meaning)});
  const std::string head =
      table.many ? fmt::format("[[{0}]]: a table of the job, once for each {0}", table.path)
                 : fmt::format("[{}]: a table of the job", table.path);
  return paragraph("", head + (table.needed ? "; no job is without it" : "")) + keys.to_text();
}

std::string exactly(std::string_view name) {
  std::string text;
  for (const KeyWords& key : key_words())
    if (key.key == name) text += in_two_lines(key);
  for (const CheckWords& check : check_words())
    if (check.id == name) text += in_two_lines(check);
  return text;
}

/// What is said of something that an everyday word is about: of a table only that it is there.
std::string about(const std::string& name) {
  const auto table = std::ranges::find(job_tables(), name, &KeyTable::path);
  if (table == job_tables().end()) return exactly(name);
  return paragraph("", fmt::format("{}: the table of it; what is in it: swathe explain {}",
                                   table->many ? "[[" + name + "]]" : "[" + name + "]", name));
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

std::string with_blanks_as(std::string name, char sign) {
  std::ranges::replace(name, ' ', sign);
  return name;
}

/// Whether a word, or one that begins with it, stands in a sentence.
bool says(std::string_view sentence, std::string_view word) {
  for (std::size_t at = 0; at < sentence.size(); ++at) {
    if (!is_letter(sentence[at]) || (at > 0 && is_letter(sentence[at - 1]))) continue;
    const auto same = [](char a, char b) {
      return a == b || (a >= 'A' && a <= 'Z' && a - 'A' + 'a' == b);
    };
    if (std::ranges::equal(sentence.substr(at, word.size()), word, same)) return true;
  }
  return false;
}

/// The keys and checks in whose words it stands.
std::vector<std::string> that_say(std::string_view name) {
  constexpr std::size_t kShortest = 3, kMost = 6;
  const std::string word = plain_word(name);
  std::vector<std::string> names;
  if (word.size() < kShortest || !std::ranges::all_of(word, is_letter)) return names;
  for (const Key& key : job_keys())
    if (says(key.label, word) || says(key.meaning, word) || says(key.why, word))
      names.emplace_back(key.path);
  for (const CheckWords& check : check_words())
    if (says(check.asks, word) || says(check.why, word)) names.push_back(check.id);
  if (names.size() > kMost) names.resize(kMost);
  return names;
}

/// Everything that explanation() knows.
std::vector<std::string> all_names() {
  std::vector<std::string> names = explained_names();
  for (const KeyTable& table : job_tables()) names.emplace_back(table.path);
  for (const EverydayWord& word : everyday_words()) names.push_back(word.word);
  for (const Key& key : job_keys()) names.emplace_back(key.path.substr(key.path.rfind('.') + 1));
  return names;
}

}  // namespace

std::vector<std::string> explained_names() {
  std::vector<std::string> names;
  for (KeyWords& key : key_words()) names.push_back(std::move(key.key));
  for (CheckWords& check : check_words()) names.push_back(std::move(check.id));
  return names;
}

std::string explanation(std::string_view name) {
  if (name.empty()) return "";
  if (std::string text = exactly(name); !text.empty()) return text;
  std::vector<std::string> parts;
  const auto add = [&](const std::string& part) {
    if (!part.empty() && std::ranges::count(parts, part) == 0) parts.push_back(part);
  };
  const auto table = std::ranges::find(job_tables(), name, &KeyTable::path);
  if (table != job_tables().end()) add(table_text(*table));
  for (const KeyWords& key : key_words())
    if (std::string_view(key.key).substr(key.key.rfind('.') + 1) == name) add(in_two_lines(key));
  if (table == job_tables().end())
    for (const std::string& other : names_about(name)) add(about(other));
  std::string text;
  for (const std::string& part : parts) text += part;
  if (!text.empty() || name.find(' ') == std::string_view::npos) return text;
  // Two words: "cloth flap", "staple spacing".
  const std::string in_table = explanation(with_blanks_as(std::string(name), '.'));
  return in_table.empty() ? explanation(with_blanks_as(std::string(name), '_')) : in_table;
}

std::string meant_by(std::string_view name) {
  const std::vector<std::string> saying = that_say(name);
  if (saying.empty()) {
    const std::vector<std::string> names = all_names();
    return fmt::format("the nearest known one is {}",
                       nearest_name(name, {names.begin(), names.end()}));
  }
  std::string list;
  for (const std::string& one : saying) list += (list.empty() ? "" : ", ") + one;
  return fmt::format("these have to do with it: {}", list);
}

Exit explain(Terminal& terminal, const std::string& name) {
  if (name.empty()) {
    terminal.answer(everything());
    return Exit::Done;
  }
  if (const std::string text = explanation(name); !text.empty()) {
    terminal.answer(text);
    return Exit::Done;
  }
  terminal.complain(fmt::format("swathe: {} is neither a key of a job nor a check; {}", named(name),
                                meant_by(name)));
  return Exit::WrongInput;
}

}  // namespace swathe::app
