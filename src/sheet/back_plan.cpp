#include "sheet/back_plan.hpp"

#include <algorithm>
#include <cassert>

namespace swathe {
namespace {

/// A place of the cloth once it lies on a board's back: x along its frame side, z on the board.
struct OnBack {
  std::size_t leg = 0;
  FlatPoint at;
};

OnBack on_back(const Made& made, std::size_t bumper, FlatPoint on_pattern) {
  const ClothMap map = made.cloth_map();
  const Wrap& wrap = made.wraps[bumper];
  const Run& run = wrap.run();
  const Section& section = wrap.section();
  const ClothPoint p = map.to_cover(on_pattern);
  const auto leg = static_cast<std::size_t>(wrap.side_of(p.s));
  if (p.s >= 0 && p.s <= run.length) {
    const double taken = taken_at_corners(wrap, made.job.cloth, p.s);
    return {leg,
            {p.s - run.sides[leg].s_minus_x, section.at(p.u > 0 ? p.u - taken : p.u + taken).z}};
  }
  // A tongue: round the end face, its last `end_reach` on the back.
  const std::vector<EndOnPattern>& ends = made.patterns[bumper].ends;
  const EndOnPattern& end = p.s < 0 ? ends.front() : ends.back();
  const double tongue = map.to_cover({end.tongue, 0}).s;
  const double past = p.s < 0 ? -p.s : p.s - run.length;
  const double in = past - (tongue - made.job.cloth.end_reach.mm());
  const double z = section.at(0).z + p.u;
  if (p.s < 0) return {0, {run.sides.front().board_from() + in, z}};
  return {run.sides.size() - 1, {run.sides.back().board_to() - in, z}};
}

}  // namespace

std::vector<BracketOnBoard> brackets_on(const Made& made, std::size_t bumper) {
  const ClothMap map = made.cloth_map();
  const Wrap& wrap = made.wraps[bumper];
  std::vector<BracketOnBoard> brackets;
  for (const BracketOnPattern& laid : made.patterns[bumper].brackets) {
    const BracketKeys& keys = made.job.brackets[static_cast<std::size_t>(laid.keys)];
    const double s = map.to_cover({laid.s, 0}).s, width = keys.width.mm();
    const auto leg = static_cast<std::size_t>(wrap.side_of(s + 0.5 * width));
    const double x = s - wrap.run().sides[leg].s_minus_x;
    const double top = made.section.height_mm() - keys.down.mm();
    brackets.push_back({laid.keys + 1, leg, {{x, top - keys.height.mm()}, {x + width, top}}});
  }
  return brackets;
}

std::vector<BoardBack> backs_of(const Made& made, std::size_t bumper) {
  const Run& run = made.wraps[bumper].run();
  const Pattern& pattern = made.patterns[bumper];
  std::vector<BoardBack> backs;
  for (const RunSide& leg : run.sides) {
    const FrameSide& side = made.frame.sides()[static_cast<std::size_t>(leg.side)];
    BoardBack back;
    back.side = side.name;
    back.leg = backs.size();
    back.from_x = leg.board_from();
    back.to_x = leg.board_to();
    backs.push_back(std::move(back));
  }
  for (const BracketOnBoard& bracket : brackets_on(made, bumper))
    backs[bracket.leg].brackets.push_back(bracket);
  for (const Staple& staple : pattern.staples) {
    if (staple.on == Staple::On::Ear) continue;  // in the board's end
    const OnBack on = on_back(made, bumper, staple.at);
    backs[on.leg].staples.push_back({on.at.x, on.at.y, staple.upright, staple.order});
  }
  for (const plane::Path& strip : pattern.strips) {
    const plane::Box box = bounds(strip);
    const OnBack on = on_back(made, bumper, box.middle());
    plane::Box lies;
    for (const FlatPoint p : {box.lo, box.hi}) lies.cover(on_back(made, bumper, p).at);
    backs[on.leg].strips.push_back(lies);
  }
  return backs;
}

}  // namespace swathe
