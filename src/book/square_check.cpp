#include "book/square_check.hpp"

#include <cstddef>

#include "book/texts.hpp"
#include "sheet/cover_ends.hpp"

namespace swathe {

using book_texts::say;

std::vector<AcrossBoards> across_boards(const Made& made, std::size_t bumper) {
  const Run& run = made.wraps[bumper].run();
  if (run.corners.empty()) return {};
  const auto side = [&](int number) -> const FrameSide& {
    return made.frame.sides()[static_cast<std::size_t>(number)];
  };
  struct Spot {
    std::string name;
    FlatPoint at;
  };
  std::vector<Spot> places = {{cover_end_words(made, bumper, true),
                               side(run.sides.front().side).at(run.sides.front().board_from(), 0)}};
  for (const RunCorner& corner : run.corners)
    places.push_back({say("square.corner", {{"before", side(corner.before).name},
                                            {"after", side(corner.after).name}}),
                      side(corner.after).from});
  places.push_back({cover_end_words(made, bumper, false),
                    side(run.sides.back().side).at(run.sides.back().board_to(), 0)});
  std::vector<AcrossBoards> across;
  for (std::size_t k = 0; k + 2 < places.size(); ++k)
    across.push_back({places[k].name, places[k + 2].name, apart(places[k].at, places[k + 2].at)});
  return across;
}

}  // namespace swathe
