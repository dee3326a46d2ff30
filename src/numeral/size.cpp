#include "swathe/numeral/size.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <map>

#include "swathe/plane/clip.hpp"

namespace swathe {
namespace {

constexpr std::size_t kMostDigits = 5;
constexpr double kFlatness = 2e-5;  // of the em: 3 um on a digit 4 in high

bool is_number(const std::string& text) {
  return !text.empty() && text.size() <= kMostDigits &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

Region scaled(const Region& region, double by) {
  Region result = region;
  for (Polygon& contour : result) {
    for (FlatPoint& p : contour) p = by * p;
  }
  return result;
}

Box moved(const Box& box, FlatPoint by) { return {box.lo + by, box.hi + by}; }

/// Line box and spaces from the places of the digits.
void measure_line(SetNumber& number) {
  number.ink = {};
  number.largest_space = 0;
  Box last;
  for (const PlacedDigit& placed : number.digits) {
    const Box ink = moved(number.shape(placed.digit).ink, placed.origin);
    if (!last.empty()) {
      number.largest_space = std::max(number.largest_space, ink.lo.x - last.hi.x);
    }
    number.ink.cover(ink);
    last = ink;
  }
}

double shortest(const std::vector<SizedDigit>& shapes) {
  const auto least = std::min_element(shapes.begin(), shapes.end(), [](auto& p, auto& q) {
    return p.ink.height() < q.ink.height();
  });
  return least->ink.height();
}

/// Everything drawn `by` times as large.
SetNumber enlarged(const SetNumber& number, double by) {
  SetNumber result = number;
  result.em *= by;
  result.height *= by;
  for (SizedDigit& shape : result.shapes) {
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

Region moved(const Region& region, FlatPoint by) {
  Region result = region;
  for (Polygon& contour : result) {
    for (FlatPoint& p : contour) p = p + by;
  }
  return result;
}

bool digits_overlap(const SetNumber& number) {
  for (std::size_t i = 1; i < number.digits.size(); ++i) {
    const PlacedDigit &left = number.digits[i - 1], &right = number.digits[i];
    const SizedDigit &before = number.shape(left.digit), &after = number.shape(right.digit);
    if (!moved(before.ink, left.origin).meets(moved(after.ink, right.origin))) continue;
    if (!intersect(moved(before.outline, left.origin), moved(after.outline, right.origin))
             .empty()) {
      return true;
    }
  }
  return false;
}

/// In a line a digit's advance may hold kerning with its neighbour: alone it has none.
double own_advance(const Face& face, char digit, bool tabular) {
  const auto alone = face.shape(std::string(1, digit), {.tabular = tabular});
  return alone.empty() ? 0 : alone.front().advance;
}

/// The number at an em of 1 mm, without extra space.
Outcome<SetNumber> set_in_ems(const Face& face, const std::string& text, bool tabular) {
  SetNumber number;
  number.text = text;
  number.em = 1;
  std::map<char, SizedDigit> shapes;
  FlatPoint pen;
  for (const ShapedGlyph& glyph : face.shape(text, {.tabular = tabular})) {
    const char digit = text[glyph.cluster];
    number.digits.push_back({digit, pen + glyph.offset});
    pen.x += glyph.advance;
    if (shapes.count(digit) != 0) continue;
    SizedDigit& shape = shapes[digit];
    shape.digit = digit;
    shape.outline = face.region(glyph.glyph, kFlatness);
    shape.ink = bounds(shape.outline);
    shape.advance = own_advance(face, digit, tabular);
    if (!face.has(static_cast<char32_t>(digit)) || shape.ink.empty() || shape.ink.height() <= 0) {
      return refuse(Why::BadFont, fmt::format("{} has no usable digit {}", face.name(), digit));
    }
  }
  if (number.digits.size() != text.size()) {
    return refuse(Why::BadFont,
                  fmt::format("{} does not set {} as one shape a digit", face.name(), text));
  }
  for (auto& [digit, shape] : shapes) number.shapes.push_back(std::move(shape));
  number.height = shortest(number.shapes);
  return number;
}

}  // namespace

const SizedDigit& SetNumber::shape(char digit) const {
  const auto found = std::find_if(shapes.begin(), shapes.end(),
                                  [&](const SizedDigit& s) { return s.digit == digit; });
  assert(found != shapes.end());
  return *found;
}

Outcome<SetNumber> set_number(const Face& face, const std::string& number, Length height,
                              const NumeralSpacing& spacing) {
  if (!is_number(number)) {
    return refuse(Why::OutOfRange, fmt::format("\"{}\" is not a number of 1 to {} digits 0 to 9",
                                               number, kMostDigits));
  }
  if (!(height > Length{})) {
    return refuse(Why::OutOfRange, "a numeral's height is not positive, expected more than 0");
  }
  Outcome<SetNumber> in_ems = set_in_ems(face, number, spacing.tabular);
  if (!in_ems) return in_ems;
  SetNumber set = enlarged(*in_ems, height.mm() / in_ems->height);
  spread(set, spacing.extra.mm());
  measure_line(set);
  if (digits_overlap(set)) {
    return refuse(Why::DoesNotFit,
                  fmt::format("the digits of {} overlap at this spacing; a greater extra space "
                              "between digits would do",
                              number));
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

Outcome<FaceCandidate> face_candidate(std::string name, const Face& face, const std::string& number,
                                      bool tabular) {
  return set_number(face, number, mm(1), {.tabular = tabular, .extra = {}})
      .map([&](const SetNumber& set) {
        return FaceCandidate{std::move(name), set.ink.width(), set.ink.height()};
      });
}

}  // namespace swathe
