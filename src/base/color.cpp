#include <fmt/format.h>

#include <cmath>

#include "swathe/base.hpp"

namespace swathe {
namespace {

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

}  // namespace

std::optional<Color> parse_color(std::string_view text) {
  if ((text.size() != 7 && text.size() != 4) || text[0] != '#') return std::nullopt;
  const bool brief = text.size() == 4;
  double channels[3] = {};
  for (std::size_t i = 0; i < 3; ++i) {
    const int high = hex_digit(brief ? text[1 + i] : text[1 + 2 * i]);
    const int low = hex_digit(brief ? text[1 + i] : text[2 + 2 * i]);
    if (high < 0 || low < 0) return std::nullopt;
    channels[i] = (high * 16 + low) / 255.0;
  }
  return Color{channels[0], channels[1], channels[2]};
}

std::string to_text(const Color& color) {
  const auto byte = [](double channel) { return static_cast<int>(std::lround(channel * 255.0)); };
  return fmt::format("#{:02x}{:02x}{:02x}", byte(color.red), byte(color.green), byte(color.blue));
}

}  // namespace swathe
