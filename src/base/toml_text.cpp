#include "base/toml_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <utility>

#include "base/limits.hpp"
#include "base/print.hpp"
#include "base/toml_faults.hpp"

namespace swathe {
namespace {

constexpr std::size_t kBlock = 64;

constexpr bool begins_character(char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; }

/// The line that would nest tables too deep for the parser's recursion; 0 where none does. Every
/// step of a.b.c is a table in a table, and the parser bounds only the depth of values.
int line_too_deep(std::string_view text) {
  for (int line = 1; !text.empty(); ++line) {
    const auto end = text.find('\n');
    const std::string_view one = text.substr(0, end);
    const auto first = one.find_first_not_of(" \t");
    const bool comment = first != std::string_view::npos && one[first] == '#';
    if (!comment && std::ranges::count(one, '.') > kMostDotsInLine) return line;
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return 0;
}

std::string utf8(char32_t code) {
  const auto byte = [](char32_t bits) {
    return static_cast<char>(static_cast<unsigned char>(bits));
  };
  if (code < 0x80) return {byte(code)};
  if (code < 0x800) return {byte(0xc0 | code >> 6), byte(0x80 | (code & 0x3f))};
  if (code < 0x10000)
    return {byte(0xe0 | code >> 12), byte(0x80 | (code >> 6 & 0x3f)), byte(0x80 | (code & 0x3f))};
  return {byte(0xf0 | code >> 18), byte(0x80 | (code >> 12 & 0x3f)),
          byte(0x80 | (code >> 6 & 0x3f)), byte(0x80 | (code & 0x3f))};
}

/// Whether an escape of that character stands at the start: \u and four digits, or \U and eight;
/// the five short ones of TOML too.
bool escape_starts(std::string_view text, char32_t code) {
  constexpr std::pair<char, char32_t> kShort[] = {
      {'b', 0x8}, {'t', 0x9}, {'n', 0xa}, {'f', 0xc}, {'r', 0xd}};
  if (text.size() < 2) return false;
  for (const auto& [letter, means] : kShort)
    if (text[1] == letter) return code == means;
  const std::size_t digits = text[1] == 'u' ? 4 : text[1] == 'U' ? 8 : 0;
  if (digits == 0 || text.size() < 2 + digits) return false;
  std::uint32_t value = 0;
  const char* end = text.data() + 2 + digits;
  return std::from_chars(text.data() + 2, end, value, 16).ptr == end && value == code;
}

}  // namespace

PlaceFinder::PlaceFinder(std::string_view text, std::string file)
    : text_(text), file_(std::move(file)), lines_{0} {
  std::size_t characters = 0;
  for (std::size_t byte = 0; byte <= text.size(); ++byte) {
    if (byte % kBlock == 0) counted_.push_back(characters);
    if (byte == text.size()) break;
    if (begins_character(text[byte])) ++characters;
    if (text[byte] == '\n') lines_.push_back(byte + 1);
  }
}

Place PlaceFinder::at(const toml::source_position& position) const {
  const auto line = std::clamp<std::size_t>(position.line, 1, lines_.size());
  const std::size_t start = lines_[line - 1];
  const std::size_t end = line < lines_.size() ? lines_[line] - 1 : text_.size();
  const std::size_t block = start / kBlock;
  const auto before = text_.substr(block * kBlock, start - block * kBlock);
  const std::size_t wanted =
      counted_[block] + static_cast<std::size_t>(std::ranges::count_if(before, begins_character)) +
      std::max<std::size_t>(position.column, 1) - 1;
  // From the last block that no more than so many characters begin before.
  const auto last = std::ranges::upper_bound(counted_, wanted) - counted_.begin() - 1;
  std::size_t byte = static_cast<std::size_t>(last) * kBlock;
  std::size_t characters = counted_[static_cast<std::size_t>(last)];
  while (byte < end && (characters < wanted || !begins_character(text_[byte])))
    if (begins_character(text_[byte++])) ++characters;
  return {file_, static_cast<int>(line),
          static_cast<int>(std::clamp(byte, start, end) - start) + 1};
}

std::size_t PlaceFinder::byte_of(const Place& place) const {
  return lines_[static_cast<std::size_t>(place.line) - 1] + static_cast<std::size_t>(place.column) -
         1;
}

Place PlaceFinder::at_byte(std::size_t byte) const {
  const auto line = std::ranges::upper_bound(lines_, byte) - lines_.begin();
  const std::size_t start = lines_[static_cast<std::size_t>(line) - 1];
  return {file_, static_cast<int>(line), static_cast<int>(byte - start) + 1};
}

Place PlaceFinder::of_character(const toml::source_region& text, char32_t code) const {
  const Place start = at(text);
  const std::string itself = utf8(code);
  const std::size_t first = byte_of(start);
  const bool escapes = first < text_.size() && text_[first] != '\'';
  for (std::size_t byte = first; byte < text_.size(); ++byte) {
    const std::string_view rest = text_.substr(byte);
    // The line break that ends the opening quotes of a long string is no part of it.
    if (rest.starts_with(itself) && !(code == '\n' && byte == first + 3)) return at_byte(byte);
    if (!escapes || rest.front() != '\\') continue;
    if (escape_starts(rest, code)) return at_byte(byte);
    ++byte;  // what it escapes, which may be a backslash
  }
  return start;
}

std::string_view PlaceFinder::written(const toml::source_region& region) const {
  const std::string_view rest = text_.substr(std::min(byte_of(at(region)), text_.size()));
  const auto goes_on = [](char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           std::string_view("_+-.:").find(c) != std::string_view::npos;
  };
  return rest.substr(
      0, static_cast<std::size_t>(std::ranges::find_if_not(rest, goes_on) - rest.begin()));
}

std::string_view without_byte_order_mark(std::string_view text) {
  constexpr std::string_view kMark = "\xef\xbb\xbf";
  if (text.starts_with(kMark)) text.remove_prefix(kMark.size());
  return text;
}

std::string described(const toml::node& node) {
  if (const auto text = node.value_exact<std::string>()) return fmt::format("\"{}\"", clip(*text));
  if (const auto whole = node.value_exact<std::int64_t>()) return fmt::format("{}", *whole);
  if (const auto number = node.value_exact<double>()) return fmt::format("{}", *number);
  if (const auto flag = node.value_exact<bool>()) return *flag ? "true" : "false";
  if (node.is_table()) return "a table";
  if (const toml::array* list = node.as_array()) {
    return list->empty() ? "an empty list" : fmt::format("a list of {}", list->size());
  }
  return "a date or time";
}

Outcome<toml::table> parse_toml(std::string_view text, const PlaceFinder& places,
                                std::string_view what, std::size_t most_bytes,
                                std::span<const std::string_view> lists) {
  if (text.size() > most_bytes)
    return refuse(
        Why::TooLarge,
        fmt::format("{} is {} bytes long, expected at most {}", what, text.size(), most_bytes),
        {places.file(), 1, 1});
  if (const int line = line_too_deep(text))
    return refuse(
        Why::TooLarge,
        fmt::format("more than {} dots in one line, expected tables less deep", kMostDotsInLine),
        {places.file(), line, 1});
  try {
    return toml::parse(text, places.file());
  } catch (const toml::parse_error& error) {  // toml++ throws here and nowhere else
    return tl::unexpected(faults_of_text(text, places, error, lists));
  }
}

}  // namespace swathe
