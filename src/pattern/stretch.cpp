#include "pattern/stretch.hpp"

namespace swathe {
namespace {

constexpr double kArcTolerance = 0.005;  ///< arcs become chords: a squeezed circle is no circle

}  // namespace

void take_out_stretch(Pattern& pattern, const ClothMap& map) {
  if (!map.pulls()) return;
  const auto point = [&](FlatPoint& p) { p = map.to_pattern({p.x, p.y}); };
  const auto along = [&](double& length) { length = map.to_pattern({length, 0}).x; };
  const auto around = [&](double& length) { length = map.to_pattern({0, length}).y; };
  const auto polygon = [&](plane::Polygon& points) {
    for (FlatPoint& p : points) point(p);
  };
  const auto path = [&](plane::Path& line) {
    const bool closed = line.closed;
    line = open_path(flatten(line, kArcTolerance));
    line.closed = closed;
    for (plane::Vertex& v : line.vertices) point(v.at);
  };
  polygon(pattern.outline);
  for (plane::Path& snip : pattern.snips) path(snip);
  for (plane::Polygon& hole : pattern.holes) polygon(hole);
  for (PatternCorner& corner : pattern.corners) {
    along(corner.s);
    along(corner.past);
    for (DartPoint& p : corner.dart) {
      around(p.u);
      along(p.half_width);
    }
    polygon(corner.notch_top);
    polygon(corner.notch_bottom);
    around(corner.square_end_allowance);
  }
  for (PleatLine& pleat : pattern.pleats) path(pleat.path);
  for (HemFold& hem : pattern.hems) {
    point(hem.from);
    point(hem.to);
  }
  for (plane::Path& stitch : pattern.stitches) path(stitch);
  for (plane::Path& mark : pattern.seam_marks) path(mark);
  for (NamedLine& line : pattern.lines) {
    point(line.from);
    point(line.to);
  }
  for (BracketOnPattern& bracket : pattern.brackets) {
    along(bracket.s);
    along(bracket.width);
    around(bracket.u);
    around(bracket.height);
    for (plane::Path& footprint : bracket.footprints) path(footprint);
    for (plane::Path& window : bracket.windows) path(window);
    for (Punch& hole : bracket.holes) point(hole.at);
  }
  for (Staple& staple : pattern.staples) point(staple.at);
  for (plane::Path& strip : pattern.strips) path(strip);
  for (MatchMark& mark : pattern.marks) point(mark.at);
  for (EndOnPattern& end : pattern.ends) {
    along(end.past_board);
    along(end.tongue);
    along(end.ears);
    along(end.flaps);
  }
  along(pattern.length);
}

}  // namespace swathe
