#include <fmt/format.h>

#include <algorithm>
#include <cassert>

#include "swathe/type.hpp"

namespace swathe {
namespace {

constexpr std::size_t kMostDigits = 64;
constexpr double kHighest = 10000;  // mm
// Limits of a usable digit, in em: nobody draws one lower, or further from its origin.
constexpr double kLowest = 0.1, kFurthest = 10;
constexpr double kLargest =
    3;  // times the shortest digit: paper and cloth are planned for that one
constexpr plane::Box kFrame = {{-kFurthest, -kFurthest}, {kFurthest, kFurthest}};

plane::Region scaled(plane::Region region, double by) {
  for (plane::Polygon& polygon : region) {
    for (FlatPoint& p : polygon) p = by * p;
  }
  return region;
}

/// An em that is not smaller than the one at which the shortest of these is `height` high: the
/// points of an outline reach no further than the outline.
double em_at_most(const Font& font, const std::vector<ShapedGlyph>& line, double height) {
  double shortest = 1;
  for (const ShapedGlyph& glyph : line) {
    plane::Box box;
    for (const type::Curve& curve : font.outline(glyph.glyph)) {
      if (curve.verb != type::Curve::Verb::Close) box.cover(curve.to);
    }
    if (!box.empty()) shortest = std::min(shortest, box.height());
  }
  return height / std::max(shortest, kLowest);
}

bool all_digits(std::string_view text) {
  return !text.empty() && text.size() <= kMostDigits &&
         std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

}  // namespace

int DigitOutline::counters() const {
  return static_cast<int>(
      std::ranges::count_if(outline, [](const plane::Polygon& p) { return area(p) < 0; }));
}

const DigitOutline& DigitLine::shape(char digit) const {
  const auto found = std::ranges::find(shapes, digit, &DigitOutline::digit);
  assert(found != shapes.end());
  return *found;
}

Outcome<DigitLine> set_digits(const Font& font, std::string_view digits, double height,
                              DigitSpacing spacing) {
  if (!all_digits(digits)) {
    return refuse(Why::OutOfRange, fmt::format("\"{}\" is not a number, expected 1 to {} digits",
                                               digits.substr(0, kMostDigits), kMostDigits));
  }
  if (!(height > 0 && height <= kHighest)) {
    return refuse(
        Why::OutOfRange,
        fmt::format("digits can be set from 0 to {} mm high, not {:g} mm", kHighest, height));
  }

  const auto shaped = font.shape(digits, {.tabular = spacing.tabular});
  bool one_each = shaped.size() == digits.size();
  for (std::size_t i = 0; one_each && i < shaped.size(); ++i) one_each = shaped[i].cluster == i;
  if (!one_each) {
    return refuse(Why::BadFont, fmt::format("the font {} does not set \"{}\" digit by digit, "
                                            "expected one that does",
                                            font.name(), digits));
  }
  const double flatness = kDigitFlatness / em_at_most(font, shaped, height);
  DigitLine line;
  Refusals refusals;
  double shortest = kFurthest;
  for (char digit = '0'; digit <= '9'; ++digit) {
    const std::size_t place = digits.find(digit);
    if (place == std::string_view::npos) continue;
    if (!font.has(static_cast<char32_t>(digit)) || font.outline(shaped[place].glyph).empty()) {
      refusals.push_back(
          {Why::BadFont,
           fmt::format("the font {} has no {}, expected one with all digits", font.name(), digit),
           {}});
      continue;
    }
    Outcome<plane::Region> region = font.region(shaped[place].glyph, flatness);
    if (!region) {
      for (const Refusal& refusal : region.error()) {
        refusals.push_back(
            {Why::BadFont,
             fmt::format("the {} of the font {} {}", digit, font.name(), refusal.sentence),
             {}});
      }
      continue;
    }
    DigitOutline shape{digit, *std::move(region), {}, shaped[place].advance};
    shape.ink = bounds(shape.outline);
    if (shape.outline.empty()) {
      refusals.push_back(
          {Why::BadFont,
           fmt::format("the font {} has no ink in its {}, expected one with all digits",
                       font.name(), digit),
           {}});
    } else if (shape.ink.height() < kLowest || !kFrame.holds(shape.ink)) {
      refusals.push_back(
          {Why::BadFont,
           fmt::format("the {} of the font {} is drawn too small or too large to set, "
                       "expected another font",
                       digit, font.name()),
           {}});
    } else {
      shortest = std::min(shortest, shape.ink.height());
      line.shapes.push_back(std::move(shape));
    }
  }
  for (const DigitOutline& shape : line.shapes) {
    const double size = std::max(shape.ink.width(), shape.ink.height());
    if (size <= kLargest * shortest) continue;
    refusals.push_back(
        {Why::BadFont,
         fmt::format(
             "the {} of the font {} is {:.1f} times as large as its shortest digit is high, "
             "expected at most {:g} times",
             shape.digit, font.name(), size / shortest, kLargest),
         {}});
  }
  if (!refusals.empty()) return tl::unexpected(std::move(refusals));

  line.em = height / shortest;
  for (DigitOutline& shape : line.shapes) {
    shape.outline = scaled(std::move(shape.outline), line.em);
    shape.ink = {line.em * shape.ink.lo, line.em * shape.ink.hi};
    shape.advance *= line.em;
  }
  double pen = 0;
  for (const ShapedGlyph& glyph : shaped) {
    const char digit = digits[glyph.cluster];
    const FlatPoint origin = FlatPoint{pen, 0} + line.em * glyph.offset;
    const plane::Box& ink = line.shape(digit).ink;
    line.places.push_back({digit, origin});
    line.ink.cover(plane::Box{ink.lo + origin, ink.hi + origin});
    pen += line.em * glyph.advance + spacing.extra;
  }
  return line;
}

}  // namespace swathe
