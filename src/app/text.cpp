#include "text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/print.hpp"

namespace swathe::app {
namespace {

bool starts_character(char byte) { return (static_cast<unsigned char>(byte) & 0xC0) != 0x80; }

/// Bytes that the first `columns` characters take.
std::size_t bytes_of(std::string_view text, std::size_t columns) {
  std::size_t seen = 0;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (starts_character(text[i]) && seen++ == columns) return i;
  return text.size();
}

}  // namespace

std::size_t columns_of(std::string_view line) {
  std::size_t columns = 0;
  bool color = false;
  for (const char c : line) {
    if (c == '\x1b') color = true;
    if (!color && starts_character(c)) ++columns;
    if (c == 'm') color = false;
  }
  return columns;
}

std::vector<std::string> wrap(std::string_view text, std::size_t columns) {
  columns = std::max<std::size_t>(columns, 1);
  std::vector<std::string> lines(1);
  while (true) {
    const std::size_t start = text.find_first_not_of(" \n");
    if (start == std::string_view::npos) return lines;
    text.remove_prefix(start);
    std::string_view word = text.substr(0, end_of_word(text));
    text.remove_prefix(word.size());
    if (!lines.back().empty()) {
      if (columns_of(lines.back()) + 1 + columns_of(word) <= columns) {
        lines.back().append(" ").append(word);
        continue;
      }
      lines.emplace_back();
    }
    while (columns_of(word) > columns) {
      const std::size_t part = bytes_of(word, columns);
      lines.back() = word.substr(0, part);
      lines.emplace_back();
      word.remove_prefix(part);
    }
    lines.back() = word;
  }
}

std::string paragraph(std::string_view head, std::string_view text, std::size_t columns) {
  const std::size_t indent = columns_of(head);
  std::string out;
  for (const std::string& line : wrap(text, columns > indent ? columns - indent : 1))
    out += fmt::format("{}{}\n", out.empty() ? std::string(head) : std::string(indent, ' '), line);
  return out;
}

std::string printable(std::string_view text) {
  std::string out;
  while (true) {
    const auto end = text.find('\n');
    out += escaped(text.substr(0, end));
    if (end == std::string_view::npos) return out;
    out += '\n';
    text.remove_prefix(end + 1);
  }
}

std::string named(std::string_view name) { return quoted_name(name); }

std::string count_of(std::size_t count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

}  // namespace swathe::app
