#pragma once

#include <fmt/format.h>

#include <array>
#include <cassert>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

#include "job/job_file.hpp"
#include "job/keys.hpp"
#include "job/names.hpp"

namespace swathe {

/// Reads one table of a job, key by key, each as it is described.
///
/// A key that is not there leaves its variable alone, and so does one at fault: the fault is kept
/// with its place. At the end finish() finds the keys that nobody asked for.
class TableReader {
 public:
  /// `table` may be null: not in the file. `unsound` is the table that a fault makes so, "" for the
  /// whole file; `before` is what stands before a key's name in a sentence ("frame.", "bumper A:
  /// ").
  TableReader(JobFile& file, const toml::table* table, std::string unsound, std::string before)
      : file_(file), table_(table), unsound_(std::move(unsound)), before_(std::move(before)) {}

  // Each reads a key by its description (read_key.cpp): whether it is there and has a value. A word
  // that stands for no value, such as the "season" of a height, is none.
  bool read(std::string_view key, Length& out);
  bool read(std::string_view key, Angle& out);
  bool read(std::string_view key, double& out);
  bool read(std::string_view key, int& out);
  bool read(std::string_view key, bool& out);
  bool read(std::string_view key, Color& out);
  bool read(std::string_view key, std::string& out);  ///< a text, digits, a side or a bumper
  bool read(std::string_view key, std::vector<Length>& out);
  bool read(std::string_view key, std::array<Length, 2>& out);
  bool read(std::string_view key, std::vector<std::string>& out);  ///< sides, none twice
  template <class T>
  bool read(std::string_view key, std::optional<T>& out);
  template <class T>
  requires std::is_enum_v<T>
  bool read(std::string_view key, T& out);

  /// What a key of this table holds, for what is read by hand; it is described as that.
  template <class Of>
  const Of& held(std::string_view key) const;

  /// Whether the key is there; a fault where not. `meaning` says what it holds.
  bool require(std::string_view key, std::string_view meaning);
  /// A fault where the key is described as needed and is not there; once, however often asked.
  void require(std::string_view key);
  /// What it then says is expected; empty where the key is not described so.
  std::string_view needed(std::string_view key) const;
  /// The key's value, for what only one table has; null where it is not there.
  const toml::node* take(std::string_view key);
  /// A table below this one; null where it is not there or is no table.
  const toml::table* table(std::string_view key);
  /// A list of tables below this one: calls read(table, number) for each, up to the most allowed.
  void tables(std::string_view key, const std::function<void(const toml::table&, int)>& read);
  /// Notes the keys that are known; faults every one that was never asked for.
  void finish();

  // Values by themselves (read_value.cpp), for lists and for keys of several kinds. `what` names
  // the value.
  std::optional<Length> read_length(const toml::node& node, const std::string& what,
                                    const LengthRange& range);
  std::optional<Angle> read_angle(const toml::node& node, const std::string& what,
                                  const AngleRange& range);
  std::optional<double> read_number(const toml::node& node, const std::string& what,
                                    const NumberRange& range);
  std::optional<std::string> read_text(const toml::node& node, const std::string& what, int most);
  std::optional<Color> read_color(const toml::node& node, const std::string& what);
  std::optional<std::string> read_side(const toml::node& node, const std::string& what);
  std::optional<std::string> read_bumper(const toml::node& node, const std::string& what);
  template <class T>
  std::optional<T> read_choice(const toml::node& node, const std::string& what,
                               const std::vector<std::string_view>& words);
  template <std::size_t N>
  std::optional<std::array<Length, N>> read_lengths(const toml::node& node, const std::string& what,
                                                    const LengthRange& range);
  /// The one of these words that a value is, but for capitals; empty where it is none.
  std::string_view word_in(const toml::node& node, const std::vector<std::string_view>& words);
  /// A list of so many items; null, and a fault, where it is none. One too long is TooLarge.
  const toml::array* read_list(const toml::node& node, const std::string& what,
                               std::string_view items, const CountRange& count);

  /// "frame.width"
  std::string name_of(std::string_view key) const { return before_ + std::string(key); }
  /// From here on sentences begin so.
  void call_it(std::string before) { before_ = std::move(before); }
  /// "WHAT is VALUE, expected EXPECTED", at the value.
  void wrong(Why why, const toml::node& node, const std::string& what, std::string_view expected);
  /// "WHAT has the character U+200B, ...", at the character, which stands in the string there.
  void unprintable(char32_t code, const toml::source_region& at, const std::string& what,
                   std::string_view expected);
  void fault(Why why, std::string sentence, const toml::source_region& at);
  JobFile& file() { return file_; }

 private:
  /// What stands before a key's name in the file, whichever of its tables this is: "bumper." of
  /// "bumper A: ".
  std::string table_name() const;
  /// Null where it is a table.
  const Key* described_key(std::string_view key) const;
  const Holds& holds(std::string_view key) const;
  /// A fault of a key itself, which may be a whole table of the file.
  void fault_of(std::string_view key, Why why, std::string sentence, const toml::source_region& at,
                bool missing = false);
  std::optional<std::string_view> read_word(const toml::node& node, const std::string& what,
                                            const std::vector<std::string_view>& words);
  /// A whole number as its digits stand in the text; nothing where there is more than digits.
  std::optional<std::string> plain_digits(const toml::node& node) const;
  std::optional<std::string> read_digits(const toml::node& node, std::string_view key, int most);
  std::optional<Length> read_length_or(const toml::node& node, const std::string& what,
                                       const OfLengthOr& of);

  JobFile& file_;
  const toml::table* table_;
  std::string unsound_, before_;
  std::vector<std::string_view> known_;
};

// ---------------------------------------------------------------------------------------------

template <class T>
bool TableReader::read(std::string_view key, std::optional<T>& out) {
  T value{};
  if (!read(key, value)) return false;
  out = std::move(value);
  return true;
}

template <class T>
requires std::is_enum_v<T>
bool TableReader::read(std::string_view key, T& out) {
  const toml::node* node = take(key);
  if (!node) return false;
  const auto value = read_choice<T>(*node, name_of(key), held<OfChoice>(key).words);
  out = value.value_or(out);
  return value.has_value();
}

template <class Of>
const Of& TableReader::held(std::string_view key) const {
  const Of* of = std::get_if<Of>(&holds(key));
  assert(of && "a key's member is of the type that its description asks for");
  return *of;
}

template <class T>
std::optional<T> TableReader::read_choice(const toml::node& node, const std::string& what,
                                          const std::vector<std::string_view>& words) {
  const auto word = read_word(node, what, words);
  return word ? std::optional(value_of<T>(*word)) : std::nullopt;
}

template <std::size_t N>
std::optional<std::array<Length, N>> TableReader::read_lengths(const toml::node& node,
                                                               const std::string& what,
                                                               const LengthRange& range) {
  const toml::array* list = node.as_array();
  if (!list || list->size() != N) {
    wrong(Why::WrongType, node, what, fmt::format("a list of {} lengths", N));
    return std::nullopt;
  }
  std::array<Length, N> all;
  bool sound = true;
  for (std::size_t i = 0; i < N; ++i) {
    const auto one = read_length((*list)[i], what, range);
    if (one)
      all[i] = *one;
    else
      sound = false;
  }
  return sound ? std::optional(all) : std::nullopt;
}

}  // namespace swathe
