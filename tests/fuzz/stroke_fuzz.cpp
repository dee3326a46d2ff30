// Any bytes as a font file: one digit of what can be set is measured on its medial axis, moved
// outwards and bridged, or refused. Which digit, the bytes decide: all ten take too long.

#include "fuzz/font_digits.hpp"
#include "numeral/stencil.hpp"
#include "plane/clip.hpp"
#include "swathe/type.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  unsigned sum = 0;
  for (std::size_t i = 0; i < size; ++i) sum = 31 * sum + data[i];
  bool done = false;
  swathe::fuzz::set_any(data, size, [&](const swathe::DigitLine& line) {
    if (done) return;
    done = true;
    const swathe::plane::Region& outline = line.shapes[sum % line.shapes.size()].outline;
    const swathe::type::Stroke stroke = swathe::measure_stroke(outline);
    if (stroke.length() > 0 && !(stroke.least() <= stroke.median())) __builtin_trap();
    swathe::plane::offset(outline, 1.0, swathe::plane::Join::Mitre);
    if (const auto stencil = swathe::make_stencil(outline, 6.35))
      swathe::less_bridges(stroke, stencil->bridges);
  });
  return 0;
}
