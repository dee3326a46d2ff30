#include "numeral/digit.hpp"

#include <algorithm>
#include <cassert>
#include <limits>

#include "numeral/method.hpp"
#include "numeral/stencil.hpp"
#include "plane/clip.hpp"
#include "swathe/type.hpp"

namespace swathe {
namespace {

/// White all round a digit. A middle that has no room for its bridges is white all over: then it
/// needs no bridge.
WhiteOutline white_outline(const plane::Region& digit, const NumeralKeys& keys) {
  WhiteOutline white;
  white.outline = offset(digit, keys.outline.mm());
  white.stencil = white.outline;
  if (!needs_bridges(keys.method)) return white;
  while (true) {
    if (auto stencil = try_stencil(white.outline, keys.bridge.mm())) {
      white.bridges = std::move(stencil->bridges);
      white.stencil = std::move(stencil->cut);
      return white;
    }
    const auto smallest =
        std::ranges::max_element(white.outline, {}, [](const plane::Polygon& contour) {
          const double signed_area = area(contour);
          return signed_area < 0 ? signed_area : -std::numeric_limits<double>::infinity();
        });
    assert(smallest != white.outline.end() && area(*smallest) < 0);
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
  digit.counters =
      static_cast<int>(std::count_if(drawn.outline.begin(), drawn.outline.end(),
                                     [](const plane::Polygon& p) { return area(p) < 0; }));
  digit.stroke_after_bridges = digit.stroke;
  digit.stencil = drawn.outline;
  if (keys.outline > Length{}) digit.white = white_outline(drawn.outline, keys);
  if (!needs_bridges(keys.method)) return digit;
  Outcome<Stencil> stencil = make_stencil(drawn.outline, keys.bridge.mm(), units);
  if (!stencil) return tl::unexpected<Refusals>(std::move(stencil.error()));
  digit.bridges = std::move(stencil->bridges);
  digit.stencil = std::move(stencil->cut);
  digit.stroke_after_bridges = less_bridges(digit.stroke, digit.bridges);
  return digit;
}

bool keeps_stroke(const DigitOutline& drawn, const NumeralKeys& keys, Length stroke) {
  // Checking the stroke is faster than making bridges, so it comes first.
  const type::Stroke whole = measure_stroke(drawn.outline);
  if (!(whole.share_at_least(stroke.mm()) > 0.5)) return false;
  if (!needs_bridges(keys.method)) return true;
  const auto stencil = try_stencil(drawn.outline, keys.bridge.mm());
  return stencil && less_bridges(whole, stencil->bridges).share_at_least(stroke.mm()) > 0.5;
}

bool keeps_stroke(const SetNumber& number, const NumeralKeys& keys, Length stroke) {
  return std::all_of(number.shapes.begin(), number.shapes.end(),
                     [&](const DigitOutline& drawn) { return keeps_stroke(drawn, keys, stroke); });
}

}  // namespace swathe
