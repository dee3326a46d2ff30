#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace swathe {

/// An sRGB color, each channel 0 to 1.
struct Color {
  double red = 0, green = 0, blue = 0;
  friend constexpr bool operator==(const Color&, const Color&) = default;
};

/// Reads "#rrggbb" or "#rgb".
std::optional<Color> parse_color(std::string_view text);
/// "#rrggbb".
std::string to_text(const Color& color);

}  // namespace swathe
