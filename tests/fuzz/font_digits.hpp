#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <string_view>

#include "swathe/type.hpp"

namespace swathe::fuzz {

/// Opens any bytes as a font and sets its digits, as a job's font file is opened and set: at the
/// ends and the middle of its axes, where it has any. `use` gets each line that could be set.
inline void set_any(const std::uint8_t* data, std::size_t size,
                    const std::function<void(const DigitLine&)>& use) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const auto plain = Font::open(bytes);
  if (!plain) return;
  const auto set = [&](const Font& font) {
    font.cap_height();
    for (const char* digits : {"0123456789", "20486"})
      if (const auto line = set_digits(font, digits, 101.6, {.tabular = size % 2 == 1, .extra = 0}))
        use(*line);
  };
  set(*plain);
  if (plain->axes().empty()) return;
  for (const double share : {0.0, 0.5, 1.0}) {
    std::map<std::string, double> axes;
    for (const FontAxis& axis : plain->axes())
      axes[axis.tag] = axis.least + share * (axis.most - axis.least);
    if (const auto varied = Font::open(bytes, axes)) set(*varied);
  }
}

}  // namespace swathe::fuzz
