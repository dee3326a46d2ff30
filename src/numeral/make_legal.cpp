#include "numeral/make_legal.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <vector>

#include "numeral/digit.hpp"
#include "plane/clip.hpp"

namespace swathe {
namespace {

constexpr int kMostTaller = 2;  // times the height
constexpr Length kOutlineStep = mm(0.1);

/// The least number of steps, 1 to `most`, that is enough. If a number is enough, so is any larger.
std::optional<int> least_steps(int most, const std::function<bool(int)>& will_do) {
  if (most < 1 || !will_do(most)) return std::nullopt;
  int too_few = 0, enough = most;
  while (enough - too_few > 1) {
    const int middle = (too_few + enough) / 2;
    (will_do(middle) ? enough : too_few) = middle;
  }
  return enough;
}

/// Digits that have too little stroke of this width.
std::string too_thin(const SetNumber& number, const NumeralKeys& keys, Length stroke) {
  std::string digits;
  for (const DigitOutline& shape : number.shapes) {
    if (!keeps_stroke(shape, keys, stroke)) digits += shape.digit;
  }
  return digits;
}

bool all_keep_stroke(const SetNumber& number, const std::string& digits, const NumeralKeys& keys,
                     Length stroke) {
  return std::all_of(digits.begin(), digits.end(),
                     [&](char digit) { return keeps_stroke(number.shape(digit), keys, stroke); });
}

struct Contours {
  std::ptrdiff_t outer = 0, holes = 0;
  friend bool operator==(const Contours&, const Contours&) = default;
};

Contours count(const plane::Region& region) {
  const auto outer = std::count_if(region.begin(), region.end(),
                                   [](const plane::Polygon& contour) { return area(contour) > 0; });
  return {outer, static_cast<std::ptrdiff_t>(region.size()) - outer};
}

/// Whether everything open in `before` is still open, and wide enough, in the heavier digits: a
/// counter that is too narrow vanishes when it is grown shut, a slot becomes a new counter.
bool stays_open(const SetNumber& before, const SetNumber& after) {
  for (const DigitOutline& shape : after.shapes) {
    const plane::Region shut = offset(shape.outline, 0.5 * kLeastOpening.mm(), plane::Join::Mitre);
    if (!(count(shut) == count(before.shape(shape.digit).outline))) return false;
  }
  return true;
}

/// The taller number: its height a whole number of steps.
std::optional<LegalNumber> taller(const SetNumber& number, const std::string& thin,
                                  const NumeralKeys& keys, Length stroke, Units units) {
  const Length step = units == Units::Inches ? inches(1.0 / 16) : mm(1);
  const Length height = mm(number.height);
  const Length floor = std::floor(height / step) * step;
  const auto at = [&](int steps) { return at_height(number, floor + steps * step, keys.spacing); };
  const int most = static_cast<int>(kMostTaller * height / step - floor / step);
  const auto steps =
      least_steps(most, [&](int n) { return all_keep_stroke(at(n), thin, keys, stroke); });
  if (!steps) return std::nullopt;
  return LegalNumber{at(*steps),
                     {},
                     fmt::format("set {} high instead of {}", exact(floor + *steps * step, units),
                                 exact(height, units))};
}

std::optional<LegalNumber> heavier_outline(const SetNumber& number, const std::string& thin,
                                           const NumeralKeys& keys, Length stroke) {
  const auto with = [&](int steps) { return heavier(number, steps * kOutlineStep, keys.spacing); };
  const int most = static_cast<int>(std::ceil(0.5 * stroke / kOutlineStep));
  const auto steps =
      least_steps(most, [&](int n) { return all_keep_stroke(with(n), thin, keys, stroke); });
  if (!steps) return std::nullopt;
  SetNumber result = with(*steps);
  if (!stays_open(number, result)) return std::nullopt;
  return LegalNumber{std::move(result), *steps * kOutlineStep,
                     fmt::format("edges moved {} mm outwards at the same height",
                                 plain_number((*steps * kOutlineStep).mm(), 1))};
}

}  // namespace

SetNumber heavier(const SetNumber& number, Length by, const NumeralSpacing& spacing) {
  const double out = by.mm();
  SetNumber result = at_height(number, mm(number.height - 2 * out), spacing);
  for (DigitOutline& shape : result.shapes) {
    shape.outline = offset(shape.outline, out, plane::Join::Mitre);
    shape.ink = bounds(shape.outline);
    shape.advance += 2 * out;
  }
  for (std::size_t i = 0; i < result.digits.size(); ++i) {
    result.digits[i].origin.x += static_cast<double>(i) * 2 * out;
  }
  measure_line(result);
  return result;
}

Outcome<LegalNumber> make_legal(const SetNumber& number, const NumeralKeys& keys, Length stroke,
                                Units units) {
  const std::string thin = too_thin(number, keys, stroke);
  if (thin.empty()) return LegalNumber{number, {}, ""};
  std::optional<LegalNumber> tall = taller(number, thin, keys, stroke, units);
  std::optional<LegalNumber> heavy = heavier_outline(number, thin, keys, stroke);
  if (!tall && !heavy) {
    return refuse(
        Why::DoesNotFit,
        fmt::format("most of the stroke of {} stays narrower than {}, even at twice the height or "
                    "with thicker strokes, expected a bolder font",
                    thin, exact(stroke, units)));
  }
  if (!heavy) return *std::move(tall);
  if (!tall) return *std::move(heavy);
  const bool narrower = heavy->number.ink.width() <= tall->number.ink.width();
  return narrower ? *std::move(heavy) : *std::move(tall);
}

}  // namespace swathe
