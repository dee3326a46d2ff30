#include "pattern/stretch.hpp"

namespace swathe {
namespace {

constexpr double kArcTolerance = 0.005;  ///< arcs become chords: a squeezed circle is none

}  // namespace

void take_out_stretch(Pattern& pattern, const ClothKeys& cloth) {
  const double around = cloth.taken_out_around();
  if (cloth.stretch_along == 0.0 && around == 0.0) return;
  const double kx = 1.0 - cloth.stretch_along, ky = 1.0 - around;
  const auto point = [&](FlatPoint& p) { p = {kx * p.x, ky * p.y}; };
  const auto polygon = [&](Polygon& points) {
    for (FlatPoint& p : points) point(p);
  };
  const auto path = [&](Path& line) {
    const bool closed = line.closed;
    line = open_path(flatten(line, kArcTolerance));
    line.closed = closed;
    for (Vertex& v : line.vertices) point(v.at);
  };
  polygon(pattern.outline);
  for (Path& snip : pattern.snips) path(snip);
  for (Polygon& hole : pattern.holes) polygon(hole);
  for (PatternCorner& corner : pattern.corners) {
    corner.s *= kx;
    corner.past *= kx;
    for (DartPoint& p : corner.dart) p = {ky * p.u, kx * p.half_width};
    polygon(corner.notch_top);
    polygon(corner.notch_bottom);
    corner.square_end_allowance *= ky;
  }
  for (PleatLine& pleat : pattern.pleats) path(pleat.path);
  for (Path& stitch : pattern.stitches) path(stitch);
  for (Path& mark : pattern.seam_marks) path(mark);
  for (NamedLine& line : pattern.lines) {
    point(line.from);
    point(line.to);
  }
  for (BracketOnPattern& bracket : pattern.brackets) {
    bracket.s *= kx;
    bracket.width *= kx;
    bracket.u *= ky;
    bracket.height *= ky;
    for (Path& footprint : bracket.footprints) path(footprint);
    for (Path& window : bracket.windows) path(window);
    for (Punch& hole : bracket.holes) point(hole.at);
  }
  for (Staple& staple : pattern.staples) point(staple.at);
  for (Path& strip : pattern.strips) path(strip);
  for (MatchMark& mark : pattern.marks) point(mark.at);
  for (EndOnPattern& end : pattern.ends) {
    end.tongue *= kx;
    end.ears *= kx;
  }
  pattern.length *= kx;
}

}  // namespace swathe
