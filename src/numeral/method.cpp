#include "numeral/method.hpp"

#include <algorithm>
#include <cassert>

#include "plane/clip.hpp"

namespace swathe {
namespace {

plane::Region mirrored_about_middle(const plane::Region& region) {
  const double middle = bounds(region).middle().x;
  const plane::Placement mirror{.mirrored = true, .turn = 0, .move = {2 * middle, 0}};
  plane::Region result;
  for (const plane::Polygon& contour : region) result.push_back(mirror(contour));
  return result;
}

const plane::Region& stencil_of(const Digit& digit, DigitLayer layer) {
  return layer == DigitLayer::White ? digit.white->stencil : digit.stencil;
}

}  // namespace

bool needs_bridges(NumeralMethod method) {
  return method == NumeralMethod::Stencil || method == NumeralMethod::PaintMask;
}

DigitLines digit_lines(const Digit& digit, NumeralMethod method, DigitLayer layer) {
  assert(layer == DigitLayer::Fill || digit.white);
  const bool white = layer == DigitLayer::White;
  const plane::Region& outline = white ? digit.white->outline : digit.outline;
  switch (method) {
    case NumeralMethod::Stencil:
    case NumeralMethod::PaintMask:
      return {stencil_of(digit, layer), {}, false};
    case NumeralMethod::IronOn:
      return {mirrored_about_middle(outline), {}, true};
    case NumeralMethod::SewOn:
      return {offset(outline, kSewAllowance.mm()), outline, false};
  }
  assert(false);
  return {};
}

plane::Region number_mask(const PlacedNumeral& placed, const std::vector<Digit>& digits,
                          DigitLayer layer) {
  const FlatPoint center{placed.center_s, placed.center_u};
  plane::Region mask;
  for (const PlacedDigit& at : placed.digits) {
    const auto digit = std::find_if(digits.begin(), digits.end(),
                                    [&](const Digit& d) { return d.digit == at.digit; });
    assert(digit != digits.end());
    for (const plane::Polygon& contour : stencil_of(*digit, layer)) {
      plane::Polygon& moved = mask.emplace_back();
      for (FlatPoint p : contour) moved.push_back(p + at.origin - center);
    }
  }
  return mask;
}

double taken_by_bridges(const Digit& digit) {
  double covered = 0;
  for (const StrokePiece& piece : digit.stroke_after_bridges.pieces()) {
    if (piece.width <= 0) covered += piece.length;
  }
  const double all = digit.stroke_after_bridges.length();
  return all > 0 ? covered / all : 0;
}

}  // namespace swathe
