#include "sheet/stroke_picture.hpp"

#include <algorithm>
#include <array>
#include <functional>

#include "draw/furniture.hpp"
#include "sheet/texts.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

/// The gray from this share of the asked width up, until the next step's share.
struct Shade {
  double from;
  double gray;
};
constexpr std::array kShades = {Shade{0, 0.3}, Shade{1, 0.58}, Shade{1.25, 0.76}, Shade{1.5, 0.9}};

constexpr double kStep = 1.5;       ///< mm between the circles that shade a stroke, at full size
constexpr double kFlatness = 0.05;  ///< mm on the sheet
constexpr double kRing = 1.6;       ///< radius on the sheet
constexpr double kSample = 4.0;     ///< height of the key's samples
constexpr double kNoTape = 1e-3;

std::size_t shade_of(double width, double asked) {
  std::size_t shade = 0;
  for (std::size_t k = 1; k < kShades.size(); ++k)
    if (width >= kShades[k].from * asked - kNoTape) shade = k;
  return shade;
}

Color gray(std::size_t shade) {
  const double g = kShades[shade].gray;
  return {g, g, g};
}

}  // namespace

void draw_shaded(Drawing& onto, const ShadedDigit& digit, double asked, FlatPoint at,
                 double scale) {
  const auto on_sheet = [&](const plane::Polygon& full) {
    plane::Polygon reduced = thinned(full, kFlatness / scale);
    for (FlatPoint& p : reduced) p = at + scale * p;
    return closed_path(reduced);
  };
  // The circles that the strokes are measured by; narrow ones over wide ones.
  std::array<std::vector<const StrokePiece*>, kShades.size()> pieces;
  for (const StrokePiece& piece : digit.stroke.pieces()) {
    auto& of_shade = pieces[shade_of(piece.width, asked)];
    const auto near = [&](const StrokePiece* other) { return apart(other->at, piece.at) < kStep; };
    if (std::ranges::none_of(of_shade, near)) of_shade.push_back(&piece);
  }
  for (std::size_t k = kShades.size(); k-- > 0;) {
    std::vector<plane::Path> shaded;
    for (const StrokePiece* piece : pieces[k])
      shaded.push_back(circle(at + scale * piece->at, 0.5 * scale * piece->width));
    if (!shaded.empty()) onto.fill(LineKind::Outline, gray(k), std::move(shaded));
  }
  for (const plane::Polygon& contour : digit.outline)
    onto.line(LineKind::Outline, on_sheet(contour));
  if (digit.stroke.length() > 0)
    onto.line(LineKind::Thin, circle(at + scale * digit.stroke.least_at(), kRing));
}

plane::Box draw_shade_key(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                          double asked, Units units) {
  FlatPoint at = top_left;
  double lowest = at.y;
  const auto next = [&](const std::string& words, const std::function<void(FlatPoint)>& sample) {
    const double width = 3 * kSample + labels.text_width_mm(words, kTableHeight) + 4;
    if (at.x > top_left.x && at.x + width > top_left.x + width_mm) {
      at = {top_left.x, at.y - 1.6 * kSample};
    }
    sample({at.x, at.y - kSample});
    onto.text({at.x + 2 * kSample + 1.5, at.y - 0.8 * kSample}, words, kTableHeight);
    at.x += width;
    lowest = std::min(lowest, at.y - kSample);
  };
  for (std::size_t k = 0; k < kShades.size(); ++k) {
    const auto width = [&](double share) { return measured(mm(share * asked), units); };
    const std::string words = k == 0 ? say("stroke.under", {{"width", width(1)}})
                              : k + 1 == kShades.size()
                                  ? say("stroke.and-more", {{"width", width(kShades[k].from)}})
                                  : say("stroke.between", {{"from", width(kShades[k].from)},
                                                           {"to", width(kShades[k + 1].from)}});
    next(words, [&](FlatPoint lo) {
      const plane::Path box = rectangle(lo, lo + FlatPoint{2 * kSample, kSample});
      onto.fill(LineKind::Outline, gray(k), {box});
      onto.line(LineKind::Thin, box);
    });
  }
  next(say("stroke.none"), [&](FlatPoint lo) {
    onto.line(LineKind::Thin, rectangle(lo, lo + FlatPoint{2 * kSample, kSample}));
  });
  next(say("stroke.narrowest"), [&](FlatPoint lo) {
    onto.line(LineKind::Thin, circle(lo + FlatPoint{kSample, 0.5 * kSample}, kRing));
  });
  return {{top_left.x, lowest}, {top_left.x + width_mm, top_left.y}};
}

}  // namespace swathe
