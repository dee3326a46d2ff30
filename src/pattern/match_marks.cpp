#include <string>

#include "pattern/fastening.hpp"

namespace swathe {
namespace {

/// Marks near a corner or an end stand this far from it, so that a whole triangle fits on the flap.
constexpr double kFromEnd = 25.4;

}  // namespace

std::vector<MatchMark> lay_match_marks(const Wrap& wrap) {
  const Section& section = wrap.section();
  std::vector<MatchMark> marks;
  int number = 0;
  for (const RunSide& leg : wrap.run().sides) {
    const double inside = leg.board_to() - leg.board_from();
    std::vector<double> from_left = {0.5 * inside};
    if (inside > 4 * kFromEnd) from_left = {kFromEnd, 0.5 * inside, inside - kFromEnd};
    const std::string& side = wrap.frame().sides()[static_cast<std::size_t>(leg.side)].name;
    for (const double x : from_left) {
      const std::string name = "M" + std::to_string(++number);
      for (const bool top : {true, false}) {
        const double u = top ? section.cloth_edge_top() : section.cloth_edge_bottom();
        marks.push_back({name, {leg.board_from() + x + leg.s_minus_x, u}, top, side, x});
      }
    }
  }
  return marks;
}

}  // namespace swathe
