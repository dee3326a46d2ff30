#include "book/card_words.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <limits>
#include <string_view>

#include "base/workshop.hpp"
#include "book/texts.hpp"

namespace swathe {
namespace {

using book_texts::say;

bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

/// The colors that everybody has a word for.
struct NamedColor {
  const char* id;
  Color color;
};
constexpr std::array kColors = {
    NamedColor{"color.white", {1, 1, 1}},         NamedColor{"color.gray", {0.5, 0.5, 0.5}},
    NamedColor{"color.black", {0, 0, 0}},         NamedColor{"color.red", {0.8, 0.1, 0.1}},
    NamedColor{"color.orange", {1, 0.55, 0}},     NamedColor{"color.yellow", {1, 0.9, 0.1}},
    NamedColor{"color.green", {0.1, 0.6, 0.2}},   NamedColor{"color.blue", {0.1, 0.25, 0.7}},
    NamedColor{"color.purple", {0.5, 0.15, 0.6}}, NamedColor{"color.pink", {1, 0.6, 0.75}}};

/// The cloth's own name for it, else the nearest of those above.
std::string color_name(const Color& color, const Job& job) {
  for (const ClothColor& cloth : job.cloth.colors)
    if (to_text(cloth.srgb) == to_text(color)) return cloth.name;
  const NamedColor* nearest = nullptr;
  double least = std::numeric_limits<double>::infinity();
  for (const NamedColor& one : kColors) {
    const double red = one.color.red - color.red, green = one.color.green - color.green,
                 blue = one.color.blue - color.blue;
    const double off = red * red + green * green + blue * blue;
    if (off < least) nearest = &one;
    least = std::min(least, off);
  }
  return say(nearest->id);
}

std::string with_color_names(const std::string& words, const Job& job) {
  constexpr std::size_t kCode = 7;  // "#b5121b"
  std::string told;
  for (std::size_t at = 0; at < words.size();) {
    const auto color = parse_color(std::string_view(words).substr(at, kCode));
    told += color ? color_name(*color, job) : std::string(1, words[at]);
    at += color ? kCode : 1;
  }
  return told;
}

/// Numbers with a point, and an inch behind them.
std::string with_fractions(const std::string& words) {
  constexpr std::string_view kInch = "in";
  std::string told;
  for (std::size_t at = 0; at < words.size();) {
    std::size_t end = at;
    while (end < words.size() && (is_digit(words[end]) || words[end] == '.')) ++end;
    const std::size_t unit = end + 1, after = unit + kInch.size();
    const bool inch =
        unit < words.size() && words[end] == ' ' && words.compare(unit, kInch.size(), kInch) == 0 &&
        (after == words.size() || std::isalpha(static_cast<unsigned char>(words[after])) == 0);
    const std::string number = words.substr(at, end - at);
    const auto length = parse_number(number);
    if (inch && length && std::ranges::count(number, '.') == 1)
      told += marked(inches(*length), Units::Inches);
    else
      told += number;
    if (end == at) told += words[end++];
    at = end;
  }
  return told;
}

}  // namespace

std::string card_words(const std::string& words, const Job& job) {
  return with_fractions(with_color_names(words, job));
}

}  // namespace swathe
