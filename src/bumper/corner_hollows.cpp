#include <algorithm>
#include <numbers>

#include "swathe/bumper.hpp"

namespace swathe {

std::vector<CornerVoid> corner_voids(const Frame& frame, const Section& section, const Run& run,
                                     const PaddingKeys& padding) {
  std::vector<CornerVoid> voids;
  const double r = 0.5 * padding.diameter.mm();
  const double near = section.thickness_mm(), far = near + section.padding_depth_mm();
  for (const RunCorner& corner : run.corners) {
    if (!corner.filled) continue;
    voids.push_back({run.name, frame.sides()[static_cast<std::size_t>(corner.before)].name,
                     frame.sides()[static_cast<std::size_t>(corner.after)].name,
                     // A round noodle leaves four grooves in its square box.
                     4 * padding.stack, corner.crossing(near, far) - corner.crossing(near, near),
                     r * r * (1.0 - std::numbers::pi / 4), r * (2.0 - std::numbers::sqrt2)});
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
