#pragma once

#include <span>
#include <string_view>

namespace swathe {

/// A data file of a room (season, new job, paper sizes, bundled font) that was built into the
/// library.
struct Embedded {
  std::string_view name;  ///< its path below its room: "rules/2026.toml",
                          ///< "fonts/anton/Anton-Regular.ttf", "kinds/hexagon.toml"
  std::string_view bytes;
};

/// Every data file, by name in byte order.
std::span<const Embedded> all_embedded();

/// The bytes of one; empty where there is none of that name.
std::string_view embedded(std::string_view name);

}  // namespace swathe
