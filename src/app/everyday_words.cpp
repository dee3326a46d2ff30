#include "everyday_words.hpp"

#include <algorithm>
#include <cassert>

#include "base/embedded.hpp"

namespace swathe::app {
namespace {

std::vector<std::string> words_of(std::string_view line) {
  std::vector<std::string> words;
  while (true) {
    const auto start = line.find_first_not_of(" \r");
    if (start == std::string_view::npos) return words;
    line.remove_prefix(start);
    words.emplace_back(line.substr(0, line.find_first_of(" \r")));
    line.remove_prefix(words.back().size());
  }
}

std::vector<EverydayWord> read(std::string_view text) {
  std::vector<EverydayWord> words;
  while (!text.empty()) {
    const auto end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    const auto colon = line.find(':');
    assert(colon != std::string_view::npos && "each line is WORD: NAMES");
    words.push_back({std::string(line.substr(0, colon)), words_of(line.substr(colon + 1))});
  }
  return words;
}

}  // namespace

const std::vector<EverydayWord>& everyday_words() {
  static const std::vector<EverydayWord> words = read(embedded("app/en/everyday_words.txt"));
  return words;
}

std::vector<std::string> names_about(std::string_view called) {
  const std::string wanted = plain_word(called);
  for (const EverydayWord& word : everyday_words())
    if (plain_word(word.word) == wanted) return word.names;
  return {};
}

std::string plain_word(std::string_view word) {
  std::string plain(word);
  for (char& c : plain)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  const bool many = plain.size() > 3 && plain.ends_with('s') && !plain.ends_with("ss");
  if (many) plain.pop_back();
  return plain;
}

}  // namespace swathe::app
