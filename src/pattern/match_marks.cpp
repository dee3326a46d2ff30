
#include "pattern/fastening.hpp"

namespace swathe {
namespace {

/// Marks near a corner or an end stand this far from it, so that a whole triangle fits on the flap.
constexpr double kFromEnd = 25.4;

/// A letter or more that no other side of the run starts with.
std::string initials(const Wrap& wrap, int side) {
  const auto name_of = [&](int k) -> const std::string& {
    return wrap.frame().sides()[static_cast<std::size_t>(k)].name;
  };
  const std::string& name = name_of(side);
  std::size_t letters = 1;
  for (const RunSide& other : wrap.run().sides) {
    if (other.side == side) continue;
    while (letters < name.size() && name_of(other.side).compare(0, letters, name, 0, letters) == 0)
      ++letters;
  }
  std::string mark = name.substr(0, letters);
  if (!mark.empty() && mark[0] >= 'a' && mark[0] <= 'z')
    mark[0] = static_cast<char>(mark[0] - 'a' + 'A');
  return mark;
}

}  // namespace

std::vector<MatchMark> lay_match_marks(const Wrap& wrap) {
  const Section& section = wrap.section();
  std::vector<MatchMark> marks;
  for (const RunSide& leg : wrap.run().sides) {
    const double inside = leg.to_x - leg.from_x;
    std::vector<double> from_left = {0.5 * inside};
    if (inside > 4 * kFromEnd) from_left = {kFromEnd, 0.5 * inside, inside - kFromEnd};
    const std::string& side = wrap.frame().sides()[static_cast<std::size_t>(leg.side)].name;
    int number = 0;
    for (const double x : from_left) {
      const std::string name = initials(wrap, leg.side) + std::to_string(++number);
      for (const bool top : {true, false}) {
        const double u = top ? section.cloth_edge_top() : section.cloth_edge_bottom();
        marks.push_back({name, {leg.from_x + x + leg.s_minus_x, u}, top, side, x});
      }
    }
  }
  return marks;
}

}  // namespace swathe
