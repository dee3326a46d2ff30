#include "book/neighbors.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "support/examples.hpp"
#include "support/made_examples.hpp"

namespace swathe {
namespace {

std::size_t side_of(const Made& made, const std::string& name) {
  const auto& sides = made.job.frame.sides;
  return static_cast<std::size_t>(std::ranges::find(sides, name) - sides.begin());
}

TEST_CASE("neighbors: an end is named by the side at its corner of the frame, else by a bumper") {
  // Held against the job's own list of sides: they go round the frame, the first corner of each
  // being the last of the one before.
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    const std::size_t count = made.job.frame.sides.size();
    std::set<std::string> bumpers;
    for (const BumperKeys& bumper : made.job.bumpers) bumpers.insert("bumper " + bumper.name);
    std::size_t named_by_side = 0;
    for (const bumper::Piece& board : made.boards)
      for (const bool start : {true, false}) {
        CAPTURE(board.bumper + " " + board.side);
        CAPTURE(start);
        const std::string name = next_to(made, board, start);
        const std::size_t own = side_of(made, board.side), other = side_of(made, name);
        REQUIRE(own < count);
        if (other == count) {
          CHECK(bumpers.count(name) == 1);
          // No piece of the same bumper meets it there; at a corner the neighbor's does.
          const EndCut::Kind kind = (start ? board.start : board.end).kind;
          CHECK(kind != EndCut::Kind::Mitred);
          CHECK(kind != EndCut::Kind::Bent);
          continue;
        }
        ++named_by_side;
        CHECK(other == (start ? own + count - 1 : own + 1) % count);
        CHECK((start ? board.start : board.end).kind != EndCut::Kind::Free);
      }
    // Each corner that a bumper turns has two ends.
    std::size_t corners = 0;
    for (const Wrap& wrap : made.wraps) corners += wrap.run().corners.size();
    CHECK(named_by_side == 2 * corners);
  }
}

}  // namespace
}  // namespace swathe
