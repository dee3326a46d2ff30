#pragma once

#include <fmt/format.h>

#include <array>
#include <functional>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/job_file.hpp"
#include "job/names.hpp"
#include "swathe/job/limits.hpp"

namespace swathe {

/// Reads one table of a job, a line for each key.
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

  void length(std::string_view key, Length& out, const LengthRange& range);
  void length(std::string_view key, std::optional<Length>& out, const LengthRange& range);
  void angle(std::string_view key, Angle& out, const AngleRange& range);
  void number(std::string_view key, double& out, const NumberRange& range);
  void number(std::string_view key, std::optional<double>& out, const NumberRange& range);
  void count(std::string_view key, int& out, const CountRange& range);
  void flag(std::string_view key, bool& out);
  void color(std::string_view key, Color& out);
  /// A line of print of 1 to `most` characters.
  void text(std::string_view key, std::string& out, int most);
  template <class T, std::size_t N>
  void choice(std::string_view key, T& out, const Word<T> (&words)[N]);
  /// Exactly N lengths: a size, a point.
  template <std::size_t N>
  void lengths(std::string_view key, std::array<Length, N>& out, const LengthRange& range);
  void lengths(std::string_view key, std::vector<Length>& out, const LengthRange& range,
               const CountRange& count);
  /// Sides of the frame, none twice.
  void sides(std::string_view key, std::vector<std::string>& out);
  void side(std::string_view key, std::string& out);
  void bumper(std::string_view key, std::string& out);

  /// Whether the key is there; a fault where not. `meaning` says what it holds.
  bool require(std::string_view key, std::string_view meaning);
  /// The key's value, for what only one table has; null where it is not there.
  const toml::node* take(std::string_view key);
  /// A table below this one; null where it is not there or is no table.
  const toml::table* table(std::string_view key);
  /// A list of tables below this one: calls read(table, number) for each, up to the most allowed.
  void tables(std::string_view key, const CountRange& count,
              const std::function<void(const toml::table&, int)>& read);
  /// Notes the keys that are known; faults every one that was never asked for.
  void finish();

  // Values by themselves, for lists and for keys of several kinds. `what` names the value.
  std::optional<Length> read_length(const toml::node& node, const std::string& what,
                                    const LengthRange& range);
  std::optional<double> read_number(const toml::node& node, const std::string& what,
                                    const NumberRange& range);
  std::optional<std::string> read_text(const toml::node& node, const std::string& what, int most);
  std::optional<Color> read_color(const toml::node& node, const std::string& what);
  std::optional<std::string> read_side(const toml::node& node, const std::string& what);
  template <class T, std::size_t N>
  std::optional<T> read_choice(const toml::node& node, const std::string& what,
                               const Word<T> (&words)[N]);
  template <std::size_t N>
  std::optional<std::array<Length, N>> read_lengths(const toml::node& node, const std::string& what,
                                                    const LengthRange& range);
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
  /// A fault of a key itself, which may be a whole table of the file.
  void fault_of(std::string_view key, Why why, std::string sentence, const toml::source_region& at,
                bool missing = false);
  bool read_choice(const toml::node& node, const std::string& what,
                   const std::vector<std::string_view>& words, std::size_t& chosen);

  JobFile& file_;
  const toml::table* table_;
  std::string unsound_, before_;
  std::vector<std::string_view> known_;
};

// ---------------------------------------------------------------------------------------------

template <class T, std::size_t N>
std::optional<T> TableReader::read_choice(const toml::node& node, const std::string& what,
                                          const Word<T> (&words)[N]) {
  std::vector<std::string_view> texts;
  for (const Word<T>& word : words) texts.push_back(word.text);
  std::size_t chosen = 0;
  if (!read_choice(node, what, texts, chosen)) return std::nullopt;
  return words[chosen].value;
}

template <class T, std::size_t N>
void TableReader::choice(std::string_view key, T& out, const Word<T> (&words)[N]) {
  const toml::node* node = take(key);
  if (!node) return;
  if (const auto value = read_choice(*node, name_of(key), words)) out = *value;
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

template <std::size_t N>
void TableReader::lengths(std::string_view key, std::array<Length, N>& out,
                          const LengthRange& range) {
  const toml::node* node = take(key);
  if (!node) return;
  if (const auto all = read_lengths<N>(*node, name_of(key), range)) out = *all;
}

}  // namespace swathe
