#include "book/hollow_drawing.hpp"

#include <algorithm>
#include <numbers>
#include <utility>

#include "book/texts.hpp"
#include "draw/marks.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kHigh = 40.0;  ///< of the stack
constexpr double kPad = 2.0;
constexpr double kWords = 80.0;  ///< room beside it
constexpr double kLeader = 8.0;
constexpr double kLetters = 1.5;  ///< a line of words, of its capitals' height

}  // namespace

Picture draw_filled_hollows(const Made& made, const Font& labels) {
  const PaddingKeys& keys = made.job.padding;
  const double r = 0.5 * kHigh / keys.stack, leg = r * (2.0 - std::numbers::sqrt2);
  Picture picture;
  picture.box = {{0, 0}, {2 * r + kLeader + kWords, kHigh + 2 * kPad}};
  Drawing& onto = picture.drawing;
  const Showing padding(onto, {Subject::padding()});
  for (int k = 0; k < keys.stack; ++k) {
    const FlatPoint middle{kPad + r, kPad + (2 * k + 1) * r};
    onto.line(LineKind::Outline, circle(middle, r));
    for (const double x : {-1.0, 1.0})
      for (const double y : {-1.0, 1.0}) {
        const FlatPoint corner = middle + r * FlatPoint{x, y};
        plane::Polygon strip = {corner, corner - FlatPoint{x * leg, 0},
                                corner - FlatPoint{0, y * leg}};
        if (area(strip) < 0) std::swap(strip[1], strip[2]);
        onto.fill(LineKind::Outline, kTint, {closed_path(strip)});
        onto.line(LineKind::Outline, closed_path(strip));
      }
  }
  // The words stand beside the uppermost strip in front.
  const FlatPoint top{kPad + 2 * r, kPad + kHigh};
  const FlatPoint strip = top - FlatPoint{0.3 * leg, 0.3 * leg};
  const FlatPoint beside{top.x + kLeader, strip.y};
  onto.line(LineKind::Thin, strip, beside);
  FlatPoint at = beside + FlatPoint{1.0, -0.5 * kTextHeight};
  for (const char* id : {"hollows.strip", "hollows.square"}) {
    onto.text(at, say(id), kTextHeight);
    picture.box.hi.x =
        std::max(picture.box.hi.x, at.x + labels.text_width_mm(say(id), kTextHeight));
    at.y -= kLetters * kTextHeight;
  }
  return picture;
}

}  // namespace swathe
