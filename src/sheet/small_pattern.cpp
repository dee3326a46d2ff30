#include "sheet/small_pattern.hpp"

#include <algorithm>

#include "draw/marks.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/shown_subjects.hpp"

namespace swathe {
namespace {

constexpr double kHalfTriangle = 1.3, kTriangle = 2.4, kHole = 0.8;
constexpr double kFlatness = 0.05;  ///< on the sheet

}  // namespace

SmallPattern small_pattern(const Made& made, std::size_t bumper, const plane::Box& area) {
  const Pattern& pattern = made.patterns[bumper];
  const plane::Placement place = pattern_placement(made, bumper, {0, 0});
  SmallPattern small;
  small.scale = std::min(area.width() / pattern.cloth_length, area.height() / pattern.cloth_width);
  const FlatPoint half = 0.5 * small.scale * FlatPoint{pattern.cloth_length, pattern.cloth_width};
  small.cloth = {area.middle() - half, area.middle() + half};
  const auto on = [&](FlatPoint p) { return small.cloth.lo + small.scale * place(p); };
  const auto path = [&](const plane::Path& full) {
    std::vector<FlatPoint> points = flatten(full, kFlatness / small.scale);
    for (FlatPoint& p : points) p = on(p);
    plane::Path reduced = open_path(points);
    reduced.closed = full.closed;
    return reduced;
  };
  Drawing& onto = small.drawing;
  const ShownOnCover shown(made, bumper);
  {
    const Showing cover(onto, shown.bumper());
    for (const PlacedNumeral& number : made.numerals_on_patterns()) {
      if (number.bumper != static_cast<int>(bumper)) continue;
      const Showing one(onto, subject_of(number));
      for (const PlacedDigit& placed : number.digits) {
        std::vector<plane::Path> outlines;
        for (const plane::Polygon& contour : made.numerals->outline_of(placed))
          outlines.push_back(path(closed_path(thinned(contour, kFlatness / small.scale))));
        onto.fill(LineKind::Numeral, kTint, std::move(outlines));
      }
    }
    onto.line(LineKind::Outline, path(closed_path(pattern.outline)));
    for (const plane::Path& snip : pattern.snips) onto.line(LineKind::Outline, path(snip));
    for (const PleatLine& pleat : pattern.pleats) {
      const Showing corner(onto, shown.pleat(pleat));
      onto.line(LineKind::Thin, path(pleat.path));
    }
    for (const HemFold& hem : pattern.hems) onto.line(LineKind::Thin, path(hem.path()));
    for (const NamedLine& named : pattern.lines) {
      const Showing part(onto, shown.line(named));
      if (named.what == NamedLine::What::BackEdge || named.what == NamedLine::What::CornerLine ||
          named.what == NamedLine::What::EndFace || named.what == NamedLine::What::PaddingEdge ||
          named.what == NamedLine::What::BoardEnd)
        onto.line(LineKind::Thin, on(named.from), on(named.to));
    }
    for (const BracketOnPattern& bracket : pattern.brackets) {
      const Showing it(onto, shown.bracket(bracket));
      const bool window = bracket.cloth == BracketCloth::Window;
      for (const plane::Path& one : window ? bracket.windows : bracket.footprints)
        onto.line(window ? LineKind::Outline : LineKind::Thin, path(one));
      for (const Punch& hole : bracket.holes) onto.line(LineKind::Thin, circle(on(hole.at), kHole));
    }
    for (const MatchMark& mark : pattern.marks) {
      const FlatPoint at = on(mark.at), rise{0, mark.top ? -kTriangle : kTriangle};
      onto.fill(LineKind::Match, kBlack,
                {plane::closed_path({at - FlatPoint{kHalfTriangle, 0},
                                     at + FlatPoint{kHalfTriangle, 0}, at + rise})});
    }
  }
  return small;
}

}  // namespace swathe
