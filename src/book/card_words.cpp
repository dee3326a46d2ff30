#include "book/card_words.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <string_view>

#include "book/texts.hpp"

namespace swathe {
namespace {

using book_texts::say;

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

}  // namespace

std::string card_words(const std::string& words, const Job& job) {
  constexpr std::size_t kCode = 7;  // "#b5121b"
  std::string told;
  for (std::size_t at = 0; at < words.size();) {
    const auto color = parse_color(std::string_view(words).substr(at, kCode));
    told += color ? color_name(*color, job) : std::string(1, words[at]);
    at += color ? kCode : 1;
  }
  return told;
}

}  // namespace swathe
