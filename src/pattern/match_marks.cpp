#include <string>

#include "pattern/fastening.hpp"
#include "pattern/outline.hpp"

namespace swathe {
namespace {

/// Marks near a corner or an end stand this far from it, so that a whole triangle fits on the flap.
constexpr double kFromEnd = 25.4;

}  // namespace

std::vector<MatchMark> lay_match_marks(const Wrap& wrap, const ClothKeys& cloth) {
  const Section& section = wrap.section();
  const double hem = hem_of(cloth);
  std::vector<MatchMark> marks;
  int number = 0;
  for (const RunSide& leg : wrap.run().sides) {
    // The flap begins beside a corner at once, and at an end as far in as the tongue allows.
    const Run& run = wrap.run();
    const double inside = leg.board_to() - leg.board_from();
    const double begin =
        leg.starts_at_corner ? 0.0 : flaps_begin(wrap, cloth, true) - run.bare(true);
    const double end =
        inside - (leg.ends_at_corner ? 0.0 : flaps_begin(wrap, cloth, false) - run.bare(false));
    if (end <= begin) continue;
    const double middle = 0.5 * (begin + end);
    std::vector<double> from_left = {middle};
    if (end - begin > 4 * kFromEnd) from_left = {begin + kFromEnd, middle, end - kFromEnd};
    const std::string& side = wrap.frame().sides()[static_cast<std::size_t>(leg.side)].name;
    for (const double x : from_left) {
      const std::string name = "M" + std::to_string(++number);
      for (const bool top : {true, false}) {
        const double u = top ? section.cloth_edge_top() - hem : section.cloth_edge_bottom() + hem;
        marks.push_back({name, {leg.board_from() + x + leg.s_minus_x, u}, top, side, x});
      }
    }
  }
  return marks;
}

}  // namespace swathe
