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
    const double inside = leg.board_to() - leg.board_from();
    // Where a tongue needs the bare board, flaps and their marks begin further in.
    const double first =
        leg.starts_at_corner ? 0.0 : flaps_begin(wrap, cloth, true) - wrap.run().bare(true);
    const double last =
        leg.ends_at_corner ? 0.0 : flaps_begin(wrap, cloth, false) - wrap.run().bare(false);
    std::vector<double> from_left = {0.5 * inside};
    if (inside > 4 * kFromEnd + first + last)
      from_left = {kFromEnd + first, 0.5 * inside, inside - kFromEnd - last};
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
