#include "job/table_reader.hpp"

#include <algorithm>
#include <cassert>

#include "base/nearest.hpp"
#include "base/print.hpp"

namespace swathe {

const toml::node* TableReader::take(std::string_view key) {
  if (std::ranges::find(known_, key) == known_.end()) known_.push_back(key);
  return table_ ? table_->get(key) : nullptr;
}

bool TableReader::require(std::string_view key, std::string_view meaning) {
  if (take(key)) return true;
  if (table_)  // a table that is missing is a fault by itself
    fault_of(key, Why::Missing, fmt::format("{} is missing, expected {}", name_of(key), meaning),
             table_->source(), true);
  return false;
}

void TableReader::require(std::string_view key) {
  if (std::ranges::find(known_, key) != known_.end()) return;
  if (const auto expected = needed(key); !expected.empty()) require(key, expected);
}

std::string_view TableReader::needed(std::string_view key) const {
  const Key* described = described_key(key);
  return described ? described->needed : std::string_view();
}

const toml::table* TableReader::table(std::string_view key) {
  const toml::node* node = take(key);
  if (!node || node->is_table()) return node ? node->as_table() : nullptr;
  fault_of(key, Why::WrongType,
           fmt::format("{} is {}, expected a table", name_of(key), described(*node)),
           node->source());
  return nullptr;
}

void TableReader::tables(std::string_view key,
                         const std::function<void(const toml::table&, int)>& read) {
  const toml::node* node = take(key);
  if (!node) return;
  const auto no_table = [&](const toml::node& wrong) {
    const std::string name = name_of(key);
    fault_of(
        key, Why::WrongType,
        wrong.is_table()
            ? fmt::format("[{0}] is for a table that is there once, expected double brackets "
                          "for each {0}: type [[{0}]]",
                          name)
            : fmt::format("{0} is {1}, expected [[{0}]], once for each", name, described(wrong)),
        wrong.source());
  };
  const auto count = times_allowed(table_name() + std::string(key));
  assert(count && "it is described as a list of tables");
  const toml::array* list = node->as_array();
  if (!list) return no_table(*node);
  if (static_cast<int>(list->size()) < count->least) no_table(*node);
  for (int i = 0; i < static_cast<int>(list->size()); ++i) {
    const toml::node& item = (*list)[static_cast<std::size_t>(i)];
    if (i == count->most)
      return fault_of(key, Why::TooLarge,
                      fmt::format("{} is there {} times, expected at most {}", name_of(key),
                                  list->size(), count->most),
                      item.source());
    if (const toml::table* one = item.as_table())
      read(*one, i);
    else
      no_table(item);
  }
}

void TableReader::finish() {
  const std::string table = table_name();
  for (const std::string_view key : known_) file_.keys.insert(table + std::string(key));
  if (!table_) return;
  for (const auto& [key, node] : *table_) {
    if (std::ranges::find(known_, key.str()) != known_.end()) continue;
    Place place = file_.places.at(key.source());
    place.key = file_.key_at(file_.places.at(node.source()));
    file_.fault(Why::UnknownKey,
                fmt::format("{} is not a key, the nearest known one is \"{}\"",
                            name_of(clip(key.str())), nearest_name(key.str(), known_)),
                std::move(place), unsound_);
  }
}

std::string TableReader::table_name() const {
  std::string name = before_.substr(0, before_.find(' '));
  return name.empty() || name.ends_with('.') ? name : name + ".";
}

const Key* TableReader::described_key(std::string_view key) const {
  return find_key(table_name() + std::string(key));
}

const Holds& TableReader::holds(std::string_view key) const {
  const Key* described = described_key(key);
  assert(described && "every key that is read is described");
  return described->holds;
}

void TableReader::wrong(Why why, const toml::node& node, const std::string& what,
                        std::string_view expected) {
  fault(why, fmt::format("{} is {}, expected {}", what, described(node), expected), node.source());
}

void TableReader::unprintable(char32_t code, const toml::source_region& at, const std::string& what,
                              std::string_view expected) {
  file_.fault(Why::OutOfRange,
              fmt::format("{} has the character {}, which cannot be printed, expected {}", what,
                          code_words(code), expected),
              file_.places.of_character(at, code), unsound_);
}

void TableReader::fault_of(std::string_view key, Why why, std::string sentence,
                           const toml::source_region& at, bool missing) {
  Place place = file_.places.at(at);
  if (missing) {  // the key to add is one of the table that stands there
    const std::string table =
        table_ == nullptr || unsound_.empty() ? std::string() : file_.key_at(place);
    place.key = table.empty() ? std::string(key) : table + "." + std::string(key);
  }
  file_.fault(why, std::move(sentence), std::move(place),
              unsound_.empty() ? std::string(key) : unsound_);
}

void TableReader::fault(Why why, std::string sentence, const toml::source_region& at) {
  file_.fault(why, std::move(sentence), file_.places.at(at), unsound_);
}

}  // namespace swathe
