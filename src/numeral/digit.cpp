#include "numeral/digit.hpp"

#include <algorithm>
#include <limits>

#include "swathe/numeral/method.hpp"
#include "swathe/numeral/stencil.hpp"
#include "swathe/plane/clip.hpp"
#include "swathe/type/stroke.hpp"

namespace swathe {
namespace {

/// White all round a digit, its middles white throughout where they have no room for their bridges.
Outcome<WhiteOutline> white_outline(const Region& digit, const NumeralKeys& keys, Units units) {
  WhiteOutline white;
  white.outline = offset(digit, keys.outline.mm());
  white.stencil = white.outline;
  if (!needs_bridges(keys.method)) return white;
  while (true) {
    Outcome<Stencil> stencil = make_stencil(white.outline, keys.bridge.mm(), units);
    if (stencil) {
      white.bridges = std::move(stencil->bridges);
      white.stencil = std::move(stencil->cut);
      return white;
    }
    const auto smallest = std::ranges::max_element(white.outline, {}, [](const Polygon& contour) {
      const double signed_area = area(contour);
      return signed_area < 0 ? signed_area : -std::numeric_limits<double>::infinity();
    });
    if (smallest == white.outline.end() || area(*smallest) >= 0)
      return tl::unexpected<Refusals>(std::move(stencil.error()));
    white.outline.erase(smallest);
  }
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
  if (keys.outline > Length{}) {
    Outcome<WhiteOutline> white = white_outline(drawn.outline, keys, units);
    if (!white) return tl::unexpected<Refusals>(std::move(white.error()));
    digit.white = *std::move(white);
  }
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
