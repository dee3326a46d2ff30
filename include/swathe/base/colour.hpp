#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace swathe {

/// An sRGB colour, each channel 0 to 1.
struct Colour {
  double red = 0, green = 0, blue = 0;
  friend constexpr bool operator==(const Colour&, const Colour&) = default;
};

/// Reads "#rrggbb" or "#rgb".
std::optional<Colour> parse_colour(std::string_view text);
/// "#rrggbb".
std::string to_text(const Colour& colour);

}  // namespace swathe
