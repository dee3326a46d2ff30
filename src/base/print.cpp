#include "base/print.hpp"

namespace swathe {
namespace {

constexpr bool goes_on(char c) { return (static_cast<unsigned char>(c) & 0xc0) == 0x80; }

/// Takes one character off the front: its bytes.
std::string_view take_character(std::string_view& text) {
  std::size_t size = 1;
  while (size < text.size() && size < 4 && goes_on(text[size])) ++size;
  const std::string_view character = text.substr(0, size);
  text.remove_prefix(size);
  return character;
}

char32_t code_point(std::string_view character) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(character[i]); };
  const unsigned lead = byte(0);
  char32_t code = character.size() == 1   ? lead
                  : character.size() == 2 ? lead & 0x1fu
                  : character.size() == 3 ? lead & 0x0fu
                                          : lead & 0x07u;
  for (std::size_t i = 1; i < character.size(); ++i) code = (code << 6) | (byte(i) & 0x3fu);
  return code;
}

/// Source: the Unicode general categories Cc, Zl, Zp, and the bidirectional controls of UAX 9.
bool printable(char32_t code) {
  if (code < 0x20 || (code >= 0x7f && code < 0xa0)) return false;
  if (code >= 0x2028 && code <= 0x202e) return false;
  if (code >= 0x2066 && code <= 0x2069) return false;
  return code != 0x200e && code != 0x200f && code != 0x61c && code != 0xfeff;
}

}  // namespace

std::optional<int> printable_characters(std::string_view text) {
  int count = 0;
  while (!text.empty()) {
    if (!printable(code_point(take_character(text)))) return std::nullopt;
    ++count;
  }
  return count;
}

std::string clip(std::string_view text, std::size_t most_characters) {
  std::string out;
  for (std::size_t n = 0; !text.empty(); ++n) {
    if (n == most_characters) return out + "...";
    const std::string_view character = take_character(text);
    if (printable(code_point(character)))
      out += character;
    else
      out += '?';
  }
  return out;
}

}  // namespace swathe
