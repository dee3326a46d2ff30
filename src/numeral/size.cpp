#include "numeral/size.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <limits>

#include "plane/clip.hpp"

namespace swathe {
namespace {

constexpr std::size_t kMostDigits = 5;
constexpr double kMeasureHeight = 100;  // mm: large, so that flattening loses nothing that matters

bool is_number(const std::string& text) {
  return !text.empty() && text.size() <= kMostDigits &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

plane::Region scaled(const plane::Region& region, double by) {
  plane::Region result = region;
  for (plane::Polygon& contour : result) {
    for (FlatPoint& p : contour) p = by * p;
  }
  return result;
}

plane::Box moved(const plane::Box& box, FlatPoint by) { return {box.lo + by, box.hi + by}; }

/// Everything drawn `by` times as large.
SetNumber enlarged(const SetNumber& number, double by) {
  SetNumber result = number;
  result.em *= by;
  for (DigitOutline& shape : result.shapes) {
    shape.outline = scaled(shape.outline, by);
    shape.ink = {by * shape.ink.lo, by * shape.ink.hi};
    shape.advance *= by;
  }
  for (PlacedDigit& placed : result.digits) placed.origin = by * placed.origin;
  return result;
}

/// Digits moved apart by the extra space that the job asks for.
void spread(SetNumber& number, double extra) {
  for (std::size_t i = 0; i < number.digits.size(); ++i) {
    number.digits[i].origin.x += static_cast<double>(i) * extra;
  }
}

plane::Region moved(const plane::Region& region, FlatPoint by) {
  plane::Region result = region;
  for (plane::Polygon& contour : result) {
    for (FlatPoint& p : contour) p = p + by;
  }
  return result;
}

bool digits_overlap(const SetNumber& number) {
  for (std::size_t i = 1; i < number.digits.size(); ++i) {
    const PlacedDigit &left = number.digits[i - 1], &right = number.digits[i];
    const DigitOutline &before = number.shape(left.digit), &after = number.shape(right.digit);
    if (!moved(before.ink, left.origin).meets(moved(after.ink, right.origin))) continue;
    if (!intersect(moved(before.outline, left.origin), moved(after.outline, right.origin))
             .empty()) {
      return true;
    }
  }
  return false;
}

}  // namespace

const DigitOutline& SetNumber::shape(char digit) const {
  const auto found = std::find_if(shapes.begin(), shapes.end(),
                                  [&](const DigitOutline& s) { return s.digit == digit; });
  assert(found != shapes.end());
  return *found;
}

Outcome<SetNumber> set_number(const Font& font, const std::string& number, Length height,
                              const NumeralSpacing& spacing) {
  if (!is_number(number)) {
    return refuse(Why::OutOfRange, fmt::format("\"{}\" is not a number, expected 1 to {} digits",
                                               number, kMostDigits));
  }
  if (!(height > Length{})) {
    return refuse(Why::OutOfRange, "the height of a digit is not positive, expected more than 0");
  }
  Outcome<DigitLine> line = set_digits(font, number, height.mm(),
                                       {.tabular = spacing.tabular, .extra = spacing.extra.mm()});
  if (!line) return tl::unexpected<Refusals>(std::move(line.error()));
  SetNumber set;
  set.text = number;
  set.em = line->em;
  set.shapes = std::move(line->shapes);
  for (const DigitLine::Place& place : line->places) {
    set.digits.push_back({place.digit, place.origin});
  }
  measure_line(set);
  if (digits_overlap(set)) {
    return refuse(
        Why::DoesNotFit,
        fmt::format("the digits of {} overlap, expected a larger numerals.spacing", number));
  }
  return set;
}

SetNumber at_height(const SetNumber& number, Length height, const NumeralSpacing& spacing) {
  SetNumber plain = number;
  spread(plain, -spacing.extra.mm());
  SetNumber result = enlarged(plain, height.mm() / number.height);
  spread(result, spacing.extra.mm());
  measure_line(result);
  return result;
}

void measure_line(SetNumber& number) {
  number.ink = {};
  number.height = std::numeric_limits<double>::infinity();
  number.largest_space = 0;
  number.least_space = std::numeric_limits<double>::infinity();
  plane::Box last;
  for (const PlacedDigit& placed : number.digits) {
    const plane::Box ink = moved(number.shape(placed.digit).ink, placed.origin);
    if (!last.empty()) {
      number.largest_space = std::max(number.largest_space, ink.lo.x - last.hi.x);
      number.least_space = std::min(number.least_space, ink.lo.x - last.hi.x);
    }
    number.ink.cover(ink);
    number.height = std::min(number.height, ink.height());
    last = ink;
  }
  if (number.digits.size() < 2) number.least_space = 0;
}

Outcome<FontCandidate> font_candidate(std::string name, const Font& font, const std::string& number,
                                      const NumeralSpacing& spacing) {
  return set_number(font, number, mm(kMeasureHeight), spacing).map([&](SetNumber set) {
    return FontCandidate{std::move(name), std::move(set)};
  });
}

}  // namespace swathe
