#include "numeral/digit.hpp"

#include <algorithm>

#include "swathe/numeral/stencil.hpp"
#include "swathe/type/stroke.hpp"

namespace swathe {
namespace {

bool needs_bridges(NumeralMethod method) {
  return method == NumeralMethod::Stencil || method == NumeralMethod::PaintMask;
}

}  // namespace

Outcome<Digit> made_digit(const DigitOutline& drawn, const NumeralKeys& keys, Units units) {
  Digit digit;
  digit.digit = drawn.digit;
  digit.height = drawn.ink.height();
  digit.width = drawn.ink.width();
  digit.advance = drawn.advance;
  digit.outline = drawn.outline;
  digit.stroke = measure_stroke(drawn.outline);
  digit.counters = static_cast<int>(std::count_if(drawn.outline.begin(), drawn.outline.end(),
                                                  [](const Polygon& p) { return area(p) < 0; }));
  digit.stroke_after_bridges = digit.stroke;
  digit.stencil = drawn.outline;
  if (!needs_bridges(keys.method)) return digit;
  Outcome<Stencil> stencil = make_stencil(drawn.outline, keys.bridge.mm(), units);
  if (!stencil) return tl::unexpected<Refusals>(std::move(stencil.error()));
  digit.bridges = std::move(stencil->bridges);
  digit.stencil = std::move(stencil->cut);
  digit.stroke_after_bridges = less_bridges(digit.stroke, digit.bridges);
  return digit;
}

bool keeps_stroke(const DigitOutline& drawn, const NumeralKeys& keys, Length stroke) {
  const Outcome<Digit> digit = made_digit(drawn, keys, Units::Millimetres);
  return digit && digit->stroke_after_bridges.share_at_least(stroke.mm()) > 0.5;
}

bool keeps_stroke(const SetNumber& number, const NumeralKeys& keys, Length stroke) {
  return std::all_of(number.shapes.begin(), number.shapes.end(),
                     [&](const DigitOutline& drawn) { return keeps_stroke(drawn, keys, stroke); });
}

}  // namespace swathe
