#include "swathe/numeral/method.hpp"

#include <algorithm>
#include <cassert>

#include "swathe/plane/clip.hpp"

namespace swathe {
namespace {

Region mirrored_about_middle(const Region& region) {
  const double middle = bounds(region).middle().x;
  const Placement mirror{.mirrored = true, .turn = 0, .move = {2 * middle, 0}};
  Region result;
  for (const Polygon& contour : region) result.push_back(mirror(contour));
  return result;
}

}  // namespace

DigitLines digit_lines(const Digit& digit, NumeralMethod method) {
  switch (method) {
    case NumeralMethod::Stencil:
    case NumeralMethod::PaintMask:
      return {digit.stencil, {}, false};
    case NumeralMethod::IronOn:
      return {mirrored_about_middle(digit.outline), {}, true};
    case NumeralMethod::SewOn:
      return {offset(digit.outline, kSewAllowance.mm()), digit.outline, false};
  }
  assert(false);
  return {};
}

Region number_mask(const PlacedNumeral& placed, const std::vector<Digit>& digits) {
  const FlatPoint centre{placed.centre_s, placed.centre_u};
  Region mask;
  for (const PlacedDigit& at : placed.digits) {
    const auto digit = std::find_if(digits.begin(), digits.end(),
                                    [&](const Digit& d) { return d.digit == at.digit; });
    assert(digit != digits.end());
    for (const Polygon& contour : digit->stencil) {
      Polygon& moved = mask.emplace_back();
      for (FlatPoint p : contour) moved.push_back(p + at.origin - centre);
    }
  }
  return mask;
}

}  // namespace swathe
