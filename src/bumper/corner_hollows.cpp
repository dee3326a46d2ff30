#include "bumper/corner_hollows.hpp"

#include <algorithm>
#include <numbers>

namespace swathe {

CornerVoid hollow_at(const Corner& corner, double near, const PaddingKeys& padding) {
  const double r = 0.5 * padding.diameter.mm(), far = near + padding.diameter.mm();
  CornerVoid hollow;
  hollow.strips = 4 * padding.stack;  // four grooves a noodle: a round in its square box
  hollow.length = corner.crossing(near, far) - corner.crossing(near, near);
  hollow.section_area = r * r * (1.0 - std::numbers::pi / 4);
  hollow.leg = r * (2.0 - std::numbers::sqrt2);
  return hollow;
}

std::vector<CornerVoid> corner_voids(const Frame& frame, const Section& section, const Run& run,
                                     const PaddingKeys& padding) {
  std::vector<CornerVoid> voids;
  for (const RunCorner& corner : run.corners) {
    if (!corner.filled) continue;
    CornerVoid& hollow = voids.emplace_back(hollow_at(corner, section.thickness_mm(), padding));
    hollow.bumper = run.name;
    hollow.side_before = frame.sides()[static_cast<std::size_t>(corner.before)].name;
    hollow.side_after = frame.sides()[static_cast<std::size_t>(corner.after)].name;
  }
  return voids;
}

std::vector<Overhang> overhangs(const std::vector<bumper::Piece>& boards,
                                const std::vector<bumper::Piece>& padding) {
  std::vector<Overhang> past;
  for (const bumper::Piece& piece : padding) {
    const auto board = std::ranges::find_if(boards, [&](const bumper::Piece& b) {
      return b.bumper == piece.bumper && b.side == piece.side && b.from_x < piece.to_x &&
             b.to_x > piece.from_x;  // where a bumper has two stretches of the side: the later one
    });
    if (board == boards.end()) continue;
    past.push_back({piece.bumper, piece.side, std::max(0.0, board->from_x - piece.from_x),
                    std::max(0.0, piece.to_x - board->to_x)});
  }
  return past;
}

}  // namespace swathe
