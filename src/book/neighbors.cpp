#include "book/neighbors.hpp"

#include <algorithm>
#include <cassert>

#include "book/texts.hpp"

namespace swathe {
namespace {

const std::string& name_of(const Made& made, const RunSide& leg) {
  return made.frame.sides()[static_cast<std::size_t>(leg.side)].name;
}

std::string bumper_beyond(const Made& made, std::size_t bumper, bool start) {
  const std::size_t count = made.wraps.size();
  const std::size_t other = start ? (bumper + count - 1) % count : (bumper + 1) % count;
  return book_texts::say("neighbor.bumper", {{"bumper", made.patterns[other].bumper}});
}

}  // namespace

std::string next_to(const Made& made, std::size_t bumper, std::size_t leg, bool start) {
  const std::vector<RunSide>& legs = made.wraps[bumper].run().sides;
  if (start && leg > 0) return name_of(made, legs[leg - 1]);
  if (!start && leg + 1 < legs.size()) return name_of(made, legs[leg + 1]);
  return bumper_beyond(made, bumper, start);
}

std::string next_to(const Made& made, const bumper::Piece& piece, bool start) {
  const std::size_t bumper = bumper_of(made, piece.bumper);
  const std::vector<RunSide>& legs = made.wraps[bumper].run().sides;
  for (std::size_t k = 0; k < legs.size(); ++k)
    if (name_of(made, legs[k]) == piece.side && legs[k].to_x >= piece.from_x &&
        legs[k].from_x <= piece.to_x)
      return next_to(made, bumper, k, start);
  return bumper_beyond(made, bumper, start);  // one that bends is on all its sides
}

std::size_t bumper_of(const Made& made, const std::string& name) {
  const auto pattern = std::ranges::find(made.patterns, name, &Pattern::bumper);
  assert(pattern != made.patterns.end() && "a bumper of that name");
  return static_cast<std::size_t>(pattern - made.patterns.begin());
}

std::string board_name(const Made& made, std::size_t bumper, std::size_t leg) {
  // Boards stand in the order of the bumpers' legs.
  for (std::size_t other = 0; other < bumper; ++other) leg += made.wraps[other].run().sides.size();
  return piece_name(made.boards[leg]);
}

}  // namespace swathe
