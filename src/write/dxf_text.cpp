#include "write/dxf_text.hpp"

#include <fmt/format.h>

#include <cstddef>

namespace swathe {
namespace {

/// The character that starts at a byte of UTF-8, and the bytes it takes.
struct Character {
  unsigned code;
  std::size_t bytes;
};

Character character_at(std::string_view words, std::size_t at) {
  const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(words[k]); };
  const unsigned first = byte(at);
  const std::size_t bytes = first < 0x80 ? 1 : first < 0xe0 ? 2 : first < 0xf0 ? 3 : 4;
  if (bytes == 1 || at + bytes > words.size()) return {first, 1};
  unsigned code = first & (0xffu >> (bytes + 1));
  for (std::size_t k = 1; k < bytes; ++k) code = code << 6 | (byte(at + k) & 0x3fu);
  return {code, bytes};
}

/// Four digits, so that what lies past them takes two halves.
/// Source: The Unicode Standard, section 3.9, UTF-16.
std::string by_number(unsigned code) {
  if (code < 0x10000) return fmt::format("\\U+{:04X}", code);
  const unsigned rest = code - 0x10000;
  return by_number(0xd800 + (rest >> 10)) + by_number(0xdc00 + (rest & 0x3ff));
}

}  // namespace

std::string dxf_text(std::string_view words) {
  std::string text;
  for (std::size_t at = 0; at < words.size();) {
    const auto [code, bytes] = character_at(words, at);
    at += bytes;
    if (code < 0x20 || code == 0x7f) continue;
    if (code == '\\' || code > 0x7f) {
      text += by_number(code);
      continue;
    }
    if (code == '%' && text.ends_with('%')) text += ' ';
    text += static_cast<char>(code);
    if (code == '^') text += ' ';  // the format's own way to say it
  }
  return text;
}

}  // namespace swathe
