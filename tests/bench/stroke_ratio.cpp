// The stroke of each digit of each bundled font at 4 in: the medial axis of the outline, and beside
// it a raster of 400 pixels an inch with the distance to the blank at the same places.
#include <cstdlib>

#include "least_seconds.hpp"
#include "ratios.hpp"
#include "support/raster.hpp"
#include "swathe/type.hpp"

namespace swathe::bench {
namespace {

constexpr double kInch = 25.4, kHeight = 4 * kInch, kPixel = kInch / 400;

struct Subject {
  DigitOutline shape;
  std::vector<type::Curve> curves;
  double em;
};

std::vector<Subject> subjects() {
  std::vector<Subject> all;
  for (const BundledFont& entry : bundled_fonts()) {
    const auto font = open_bundled(entry);
    if (!font) std::abort();
    const auto line = set_digits(*font, "0123456789", kHeight);
    if (!line) std::abort();
    for (const DigitOutline& shape : line->shapes) {
      const unsigned glyph = font->shape(std::string(1, shape.digit))[0].glyph;
      all.push_back({shape, font->outline(glyph), line->em});
    }
  }
  return all;
}

}  // namespace

std::vector<Ratio> stroke_ratios() {
  const std::vector<Subject> all = subjects();
  std::vector<type::Stroke> strokes;
  const double ours = least_seconds(3, [&] {
    strokes.clear();
    for (const Subject& one : all) strokes.push_back(measure_stroke(one.shape.outline));
  });
  double sum = 0;
  const double raster = least_seconds(1, [&] {
    for (std::size_t k = 0; k < all.size(); ++k) {
      const test::Raster dots(all[k].curves, all[k].em, all[k].shape.ink, kPixel);
      for (const StrokePiece& piece : strokes[k].pieces()) sum += dots.to_blank(piece.at);
    }
  });
  const auto digits = static_cast<double>(all.size());
  return {{"the stroke of a digit, mean of all fonts", ours / digits,
           "a raster of 400 pixels an inch", sum > 0 ? raster / digits : 0}};
}

}  // namespace swathe::bench
