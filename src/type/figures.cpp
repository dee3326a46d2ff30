#include <algorithm>
#include <array>
#include <cmath>

#include "plane/clip.hpp"
#include "swathe/type.hpp"

namespace swathe {
namespace {

constexpr std::string_view kAllDigits = "0123456789";

/// How far the ink reaches to the left and to the right in each of a number of equal bands, from
/// the lowest ink of the font to the highest.
struct Profile {
  static constexpr std::size_t kBands = 64;
  static constexpr double kNone = 1e300;
  std::array<double, kBands> left, right;
};

Profile profile_of(const plane::Region& outline, const plane::Box& ink) {
  Profile profile;
  profile.left.fill(Profile::kNone);
  profile.right.fill(-Profile::kNone);
  const double band = ink.height() / Profile::kBands;
  const auto band_of = [&](double y) {
    const double number = std::floor((y - ink.lo.y) / band);
    return static_cast<std::size_t>(std::clamp(number, 0.0, Profile::kBands - 1.0));
  };
  for (const plane::Polygon& polygon : outline) {
    FlatPoint a = polygon.back();
    for (const FlatPoint b : polygon) {
      const FlatPoint lo = a.y < b.y ? a : b, hi = a.y < b.y ? b : a;
      for (std::size_t i = band_of(lo.y); i <= band_of(hi.y); ++i) {
        // The part of the edge in the band reaches furthest at one of its two ends.
        const double bottom = ink.lo.y + band * static_cast<double>(i);
        for (const double cut : {bottom, bottom + band}) {
          const double y = std::clamp(cut, lo.y, hi.y);
          const double x = hi.y > lo.y ? lo.x + (hi.x - lo.x) * (y - lo.y) / (hi.y - lo.y)
                           : cut < y   ? lo.x
                                       : hi.x;
          profile.left[i] = std::min(profile.left[i], x);
          profile.right[i] = std::max(profile.right[i], x);
        }
      }
      a = b;
    }
  }
  return profile;
}

/// The neighbors of all hundred that come closest.
DigitPair closest_pair(const Font& font, const DigitLine& line) {
  plane::Box ink;
  for (const DigitOutline& shape : line.shapes) ink.cover(shape.ink);
  std::vector<Profile> profiles;
  for (const DigitOutline& shape : line.shapes) profiles.push_back(profile_of(shape.outline, ink));
  DigitPair closest{'0', '0', Profile::kNone};
  for (const char left : kAllDigits) {
    for (const char right : kAllDigits) {
      const double step = line.em * font.shape(std::string{left, right}).front().advance;
      const Profile& before = profiles[static_cast<std::size_t>(left - '0')];
      const Profile& after = profiles[static_cast<std::size_t>(right - '0')];
      for (std::size_t i = 0; i < Profile::kBands; ++i) {
        const double space = step + after.left[i] - before.right[i];
        if (space < closest.value) closest = {left, right, space};
      }
    }
  }
  return closest;
}

plane::Region middle_on_origin(const DigitOutline& shape) {
  plane::Region region = shape.outline;
  for (plane::Polygon& polygon : region) {
    for (FlatPoint& p : polygon) p = p - shape.ink.middle();
  }
  return region;
}

std::vector<DigitPair> alike_pairs(const DigitLine& line) {
  std::vector<DigitPair> pairs = {
      {'1', '7', 0}, {'6', '8', 0}, {'3', '8', 0}, {'5', '6', 0}, {'0', '8', 0}};
  for (DigitPair& pair : pairs) {
    const DigitOutline &a = line.shape(pair.left), &b = line.shape(pair.right);
    const double common = area(intersect(middle_on_origin(a), middle_on_origin(b)));
    pair.value = common / (area(a.outline) + area(b.outline) - common);
  }
  std::ranges::stable_sort(pairs, std::ranges::greater(), &DigitPair::value);
  return pairs;
}

DigitFigures figures_of(const DigitOutline& shape, double stroke_asked) {
  const type::Stroke stroke = measure_stroke(shape.outline);
  return {shape.digit,      shape.ink.height(), shape.ink.width(),
          shape.counters(), stroke.length(),    stroke.median(),
          stroke.least(),   stroke.least_at(),  stroke.share_at_least(stroke_asked)};
}

/// Ink of five digits side by side: four advances and the ink of the last.
void measure_fives(const DigitLine& line, FontFigures& figures) {
  double advances = 0, inks = 0;
  for (const DigitOutline& shape : line.shapes) {
    figures.five_widest = std::max(figures.five_widest, 4 * shape.advance + shape.ink.width());
    advances += shape.advance;
    inks += shape.ink.width();
  }
  const double count = static_cast<double>(line.shapes.size());
  figures.five_average = (4 * advances + inks) / count;
}

}  // namespace

double FontFigures::share_at_least() const {
  double length = 0, enough = 0;
  for (const DigitFigures& digit : digits) {
    length += digit.stroke_length;
    enough += digit.stroke_length * digit.share_at_least;
  }
  return length > 0 ? enough / length : 0;
}

DigitFigures FontFigures::thinnest() const {
  const auto thinnest = std::ranges::min_element(digits, {}, &DigitFigures::stroke_least);
  return thinnest == digits.end() ? DigitFigures() : *thinnest;
}

Outcome<FontFigures> measure_font(const Font& font, double height, double stroke_asked) {
  const auto line = set_digits(font, kAllDigits, height);
  if (!line) return tl::unexpected(line.error());
  FontFigures figures;
  figures.height = height;
  figures.stroke_asked = stroke_asked;
  for (const DigitOutline& shape : line->shapes) {
    figures.digits.push_back(figures_of(shape, stroke_asked));
  }
  measure_fives(*line, figures);
  figures.closest = closest_pair(font, *line);
  figures.alike = alike_pairs(*line);
  return figures;
}

std::string verdict(const FontFigures& figures) {
  std::string thin, thin_in_places;
  for (const DigitFigures& digit : figures.digits) {
    if (digit.share_at_least >= 1 - 1e-9) continue;
    std::string& list = digit.share_at_least > 0.5 ? thin_in_places : thin;
    if (!list.empty()) list += ", ";
    list += digit.digit;
  }
  if (!thin.empty()) return "too thin for the most part: " + thin;
  if (!thin_in_places.empty()) {
    return "wide enough for the most part; thinner in places: " + thin_in_places;
  }
  return "wide enough throughout";
}

}  // namespace swathe
