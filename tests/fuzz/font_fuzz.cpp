// Any bytes as a font file: opened, shaped and drawn as outlines, or refused.

#include "fuzz/font_digits.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  swathe::fuzz::set_any(data, size, [](const swathe::DigitLine&) {});
  return 0;
}
