#include <algorithm>
#include <charconv>
#include <iterator>
#include <utility>

#include "swathe/base.hpp"

namespace swathe {
namespace {

/// A kind's text: '*' stands for a name, '#' for a number.
struct Spelling {
  Subject::Kind kind;
  std::string_view words;
};

constexpr Spelling kSpellings[] = {
    {Subject::Kind::Frame, "frame"},
    {Subject::Kind::Side, "side.*"},
    {Subject::Kind::Corner, "corner.*.*"},
    {Subject::Kind::Bumpers, "bumpers"},
    {Subject::Kind::Bumper, "bumper.*"},
    {Subject::Kind::Start, "bumper.*.start"},
    {Subject::Kind::End, "bumper.*.end"},
    {Subject::Kind::BumperCorner, "bumper.*.corner.*.*"},
    {Subject::Kind::Board, "bumper.*.board.*"},
    {Subject::Kind::PaddingPiece, "bumper.*.padding.*"},
    {Subject::Kind::Boards, "boards"},
    {Subject::Kind::Padding, "padding"},
    {Subject::Kind::Cloth, "cloth"},
    {Subject::Kind::ClothOfColor, "cloth.*"},
    {Subject::Kind::Bracket, "bracket.#"},
    {Subject::Kind::Numerals, "numerals"},
    {Subject::Kind::Numeral, "numeral.#"},
    {Subject::Kind::Digit, "digit.*"},
    {Subject::Kind::Blind, "blind.#"},
    {Subject::Kind::Rule, "rule.*"},
};
static_assert(std::size(kSpellings) == static_cast<std::size_t>(Subject::Kind::Rule) + 1);

constexpr std::string_view kHex = "0123456789ABCDEF";

bool stands_bare(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_' || static_cast<unsigned char>(c) >= 0x80;
}

std::string escaped_name(std::string_view name) {
  std::string text;
  for (const char c : name) {
    if (stands_bare(c)) {
      text += c;
      continue;
    }
    const auto byte = static_cast<unsigned char>(c);
    text.append({'%', kHex[byte >> 4U], kHex[byte & 0xFU]});
  }
  return text;
}

std::optional<std::string> name_in(std::string_view text) {
  if (text.empty()) return std::nullopt;
  std::string name;
  for (std::size_t k = 0; k < text.size(); ++k) {
    if (text[k] != '%') {
      if (!stands_bare(text[k])) return std::nullopt;
      name += text[k];
      continue;
    }
    if (k + 2 >= text.size()) return std::nullopt;
    const auto high = kHex.find(text[k + 1]), low = kHex.find(text[k + 2]);
    if (high == std::string_view::npos || low == std::string_view::npos) return std::nullopt;
    const char c = static_cast<char>(16 * high + low);
    if (stands_bare(c)) return std::nullopt;  // one text for each subject
    name += c;
    k += 2;
  }
  return name;
}

std::optional<int> number_in(std::string_view text) {
  int number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  if (number < 1 || text.front() == '0') return std::nullopt;
  return number;
}

/// The word before the next dot, which is taken off with it.
std::string_view take_word(std::string_view& text) {
  const auto dot = text.find('.');
  const std::string_view word = text.substr(0, dot);
  text = dot == std::string_view::npos ? std::string_view() : text.substr(dot + 1);
  return word;
}

std::optional<Subject> read_as(const Spelling& spelling, std::string_view text) {
  std::string_view words = spelling.words;
  if (std::ranges::count(words, '.') != std::ranges::count(text, '.')) return std::nullopt;
  Subject subject;
  subject.kind = spelling.kind;
  while (!words.empty()) {
    const std::string_view asked = take_word(words), has = take_word(text);
    if (asked == "*") {
      auto name = name_in(has);
      if (!name) return std::nullopt;
      subject.names.push_back(*std::move(name));
    } else if (asked == "#") {
      const auto number = number_in(has);
      if (!number) return std::nullopt;
      subject.number = *number;
    } else if (asked != has) {
      return std::nullopt;
    }
  }
  return subject;
}

}  // namespace

std::string to_text(const Subject& subject) {
  std::string_view words = kSpellings[static_cast<std::size_t>(subject.kind)].words;
  std::string text;
  auto name = subject.names.begin();
  while (!words.empty()) {
    const std::string_view word = take_word(words);
    if (!text.empty()) text += '.';
    if (word == "*")
      text += escaped_name(*name++);
    else if (word == "#")
      text += std::to_string(subject.number);
    else
      text += word;
  }
  return text;
}

std::optional<Subject> parse_subject(std::string_view text) {
  for (const Spelling& spelling : kSpellings)
    if (auto subject = read_as(spelling, text)) return subject;
  return std::nullopt;
}

Subjects::Subjects(std::vector<Subject> list) {
  if (!list.empty()) list_ = std::make_shared<const std::vector<Subject>>(std::move(list));
}

const std::vector<Subject>& Subjects::list() const {
  static const std::vector<Subject> none;
  return list_ ? *list_ : none;
}

std::string to_text(const Subjects& subjects) {
  std::string text;
  for (const Subject& subject : subjects) text += (text.empty() ? "" : " ") + to_text(subject);
  return text;
}

}  // namespace swathe
