#include "base/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <vector>

namespace swathe {
namespace {

struct Range {
  char32_t first, last;
};

// Source: Unicode 15: the general categories Cc, Cf, Cs, Zl and Zp; the noncharacters of chapter
// 23.7 that lie together; and what DerivedCoreProperties.txt has as Default_Ignorable_Code_Point,
// which is drawn as nothing. print_test.cpp holds this against HarfBuzz's tables.
constexpr Range kUnprintable[] = {
    {0x0, 0x1f},        {0x7f, 0x9f},       {0xad, 0xad},       {0x34f, 0x34f},
    {0x600, 0x605},     {0x61c, 0x61c},     {0x6dd, 0x6dd},     {0x70f, 0x70f},
    {0x890, 0x891},     {0x8e2, 0x8e2},     {0x115f, 0x1160},   {0x17b4, 0x17b5},
    {0x180b, 0x180f},   {0x200b, 0x200f},   {0x2028, 0x202e},   {0x2060, 0x206f},
    {0x3164, 0x3164},   {0xd800, 0xdfff},   {0xfdd0, 0xfdef},   {0xfe00, 0xfe0f},
    {0xfeff, 0xfeff},   {0xffa0, 0xffa0},   {0xfff0, 0xfffb},   {0x110bd, 0x110bd},
    {0x110cd, 0x110cd}, {0x13430, 0x1343f}, {0x1bca0, 0x1bca3}, {0x1d173, 0x1d17a},
    {0xe0000, 0xe0fff},
};

constexpr bool goes_on(char c) { return (static_cast<unsigned char>(c) & 0xc0) == 0x80; }

/// How many bytes a character takes that begins with this one; 0 where none does.
std::size_t size_of(unsigned lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xc2 && lead < 0xe0) return 2;
  if (lead >= 0xe0 && lead < 0xf0) return 3;
  return lead >= 0xf0 && lead < 0xf5 ? 4 : 0;
}

std::string one_escaped(const Character& character) {
  if (character.code && is_printable(*character.code)) return std::string(character.bytes);
  std::string out;
  for (const char c : character.bytes)
    out += fmt::format("\\x{:02x}", static_cast<unsigned>(static_cast<unsigned char>(c)));
  return out;
}

}  // namespace

Character take_character(std::string_view& text) {
  constexpr char32_t kLeast[] = {0, 0, 0x80, 0x800, 0x10000};
  const auto lead = static_cast<unsigned char>(text.front());
  std::size_t size = size_of(lead);
  char32_t code = size == 1 ? lead : lead & (0xffu >> (size + 1));
  bool sound = size > 0 && size <= text.size();
  for (std::size_t k = 1; sound && k < size; ++k) {
    sound = goes_on(text[k]);
    code = code << 6 | (static_cast<unsigned char>(text[k]) & 0x3fu);
  }
  sound = sound && code >= kLeast[size] && code <= 0x10ffff && (code < 0xd800 || code > 0xdfff);
  if (!sound) size = 1;
  const Character taken{text.substr(0, size), sound ? std::optional(code) : std::nullopt};
  text.remove_prefix(size);
  return taken;
}

bool is_printable(char32_t code) {
  if (code > 0x10ffff || (code & 0xfffe) == 0xfffe) return false;  // the last two of each plane
  const auto after =
      std::ranges::upper_bound(kUnprintable, code, {}, [](const Range& r) { return r.first; });
  return after == std::begin(kUnprintable) || std::prev(after)->last < code;
}

int characters_in(std::string_view text) {
  int count = 0;
  for (; !text.empty(); ++count) take_character(text);
  return count;
}

std::optional<char32_t> first_unprintable(std::string_view text) {
  while (!text.empty()) {
    const auto code = take_character(text).code;
    if (code && !is_printable(*code)) return code;
  }
  return std::nullopt;
}

std::size_t end_of_word(std::string_view text) {
  const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
  std::size_t end = text.find_first_of(" \n");
  if (end == std::string_view::npos) return text.size();
  if (text[end] == '\n' || end == 0 || !is_digit(text[end - 1])) return end;
  std::size_t next = end + 1;
  while (next < text.size() && is_digit(text[next])) ++next;
  if (next == end + 1 || next == text.size() || text[next] != '/') return end;
  return std::min(text.find_first_of(" \n", next), text.size());
}

std::string code_words(char32_t code) {
  return fmt::format("U+{:04X}", static_cast<std::uint32_t>(code));
}

std::string clip(std::string_view text, std::size_t most_characters) {
  std::string out;
  for (std::size_t n = 0; !text.empty(); ++n) {
    if (n == most_characters) return out + "…";
    const Character character = take_character(text);
    if (character.code && is_printable(*character.code))
      out += character.bytes;
    else
      out += '?';
  }
  return out;
}

std::string escaped(std::string_view bytes) {
  std::string out;
  while (!bytes.empty()) out += one_escaped(take_character(bytes));
  return out;
}

std::string quoted_name(std::string_view name, std::size_t most_characters) {
  std::vector<std::string> parts;
  while (!name.empty()) parts.push_back(one_escaped(take_character(name)));
  const auto join = [&](std::size_t from, std::size_t to) {
    std::string out;
    for (std::size_t k = from; k < to; ++k) out += parts[k];
    return out;
  };
  if (parts.size() <= most_characters) return join(0, parts.size());
  const std::size_t head = most_characters / 2, tail = most_characters - head;
  return join(0, head) + "…" + join(parts.size() - tail, parts.size());
}

std::string quoted_choice(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t k = 0; k < names.size(); ++k) {
    if (k > 0) text += k + 1 == names.size() ? " or " : ", ";
    text += '"' + names[k] + '"';
  }
  return text;
}

}  // namespace swathe
