#include "base/toml_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/print.hpp"
#include "swathe/base/limits.hpp"

namespace swathe {
namespace {

constexpr std::size_t kBlock = 64;
constexpr std::size_t kMostDescription = 200;  ///< of what the parser says: it quotes the text

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

std::string_view without_byte_order_mark(std::string_view text) {
  constexpr std::string_view kMark = "\xef\xbb\xbf";
  if (text.starts_with(kMark)) text.remove_prefix(kMark.size());
  return text;
}

Outcome<toml::table> parse_toml(std::string_view text, const PlaceFinder& places,
                                std::string_view what, std::size_t most_bytes) {
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
    return refuse(Why::Malformed, clip(error.description(), kMostDescription),
                  places.at(error.source()));
  }
}

}  // namespace swathe
