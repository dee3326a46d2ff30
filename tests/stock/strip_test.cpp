#include "stock/strip.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <bitset>
#include <functional>
#include <limits>
#include <numeric>
#include <optional>

#include "support/drawn.hpp"

namespace swathe {
namespace {

SteppedShape box_shape(Micron along, Micron across) {
  return {{{0, across, 0, along}}, along, across};
}

StripPiece box(Micron along, Micron across) { return {{box_shape(along, across)}}; }

StripPiece box_either_way(Micron along, Micron across) {
  return {{box_shape(along, across), box_shape(across, along)}};
}

SteppedShape turned_half(const SteppedShape& shape) {
  SteppedShape turned{{}, shape.along, shape.across};
  for (auto step = shape.steps.rbegin(); step != shape.steps.rend(); ++step)
    turned.steps.push_back({shape.across - step->to_y, shape.across - step->from_y,
                            shape.along - step->to_x, shape.along - step->from_x});
  return turned;
}

/// A quarter turn counter-clockwise, in steps of one.
SteppedShape turned_quarter(const SteppedShape& shape) {
  SteppedShape turned{{}, shape.across, shape.along};
  for (Micron x = 0; x < shape.along; ++x) {
    Step step{x, x + 1, shape.across, 0};
    for (const Step& old : shape.steps) {
      if (x < old.from_x || x >= old.to_x) continue;
      step.from_x = std::min(step.from_x, shape.across - old.to_y);
      step.to_x = std::max(step.to_x, shape.across - old.from_y);
    }
    turned.steps.push_back(step);
  }
  return turned;
}

/// A cover as the tool draws it: flaps shorter than ears, ears shorter than tongues.
SteppedShape tongued(std::mt19937_64& rng) {
  const auto some = [&](Micron most) {
    return static_cast<Micron>(rng() % static_cast<std::uint64_t>(most + 1));
  };
  SteppedShape shape;
  Micron left = some(2), right = 3 + some(2), y = 0;
  const Micron peak = 1 + some(2);  // steps reach further up to here, less beyond
  for (Micron k = 0; k < peak + 1 + some(1); ++k) {
    const Micron high = 1 + some(1);
    shape.steps.push_back({y, y + high, left, right});
    y += high;
    const Micron out = k < peak ? -1 : 1;
    if (rng() % 2 == 0 && left + out < right) left += out;
    if (rng() % 2 == 0 && right - out > left) right -= out;
  }
  Micron least = shape.steps.front().from_x, most = shape.steps.front().to_x;
  for (const Step& step : shape.steps) {
    least = std::min(least, step.from_x);
    most = std::max(most, step.to_x);
  }
  for (Step& step : shape.steps) {
    step.from_x -= least;
    step.to_x -= least;
  }
  shape.along = most - least;
  shape.across = y;
  return shape;
}

bool overlap(const SteppedShape& a, const StripPlace& at_a, const SteppedShape& b,
             const StripPlace& at_b) {
  for (const Step& p : a.steps)
    for (const Step& q : b.steps)
      if (at_a.x + p.from_x < at_b.x + q.to_x && at_b.x + q.from_x < at_a.x + p.to_x &&
          at_a.y + p.from_y < at_b.y + q.to_y && at_b.y + q.from_y < at_a.y + p.to_y)
        return true;
  return false;
}

/// Promise (1) of lay_on_strip, and that its length is what the pieces take.
void check_sound(const StripLay& lay, const std::vector<StripPiece>& pieces, const Strip& strip) {
  REQUIRE(lay.at.size() == pieces.size());
  Micron end = 0;
  for (std::size_t b = 0; b < pieces.size(); ++b) {
    const StripPlace& at = lay.at[b];
    REQUIRE(at.way < pieces[b].ways.size());
    const SteppedShape& shape = pieces[b].ways[at.way];
    CHECK(at.x >= 0);
    CHECK(at.y >= 0);
    CHECK(at.y + shape.across <= strip.width);
    CHECK(at.x / strip.length == (at.x + shape.along - 1) / strip.length);
    end = std::max(end, at.x + shape.along);
    for (std::size_t a = 0; a < b; ++a)
      CHECK_FALSE(overlap(pieces[a].ways[lay.at[a].way], lay.at[a], shape, at));
  }
  CHECK(lay.length == end);
}

/// The slow truth: the least length on whole places, by every place of every piece in every way.
/// Pieces of whole sizes lie shortest at whole places: pushed left and down, each lies at sums of
/// sizes.
class Exhaustive {
 public:
  Exhaustive(const std::vector<StripPiece>& pieces, Micron width)
      : pieces_(pieces), width_(width) {}

  Micron least() {
    Micron length = 1;
    while (!fits(0, {}, length)) {
      ++length;
      REQUIRE(length * width_ <= static_cast<Micron>(kMostCells));
    }
    return length;
  }

 private:
  static constexpr std::size_t kMostCells = 256;
  using Cells = std::bitset<kMostCells>;

  bool fits(std::size_t piece, const Cells& taken, Micron length) {
    if (piece == pieces_.size()) return true;
    for (const SteppedShape& way : pieces_[piece].ways)
      for (Micron x = 0; x + way.along <= length; ++x)
        for (Micron y = 0; y + way.across <= width_; ++y) {
          const Cells cells = cells_of(way, x, y);
          if ((cells & taken).none() && fits(piece + 1, taken | cells, length)) return true;
        }
    return false;
  }
  Cells cells_of(const SteppedShape& shape, Micron x, Micron y) const {
    Cells cells;
    for (const Step& step : shape.steps)
      for (Micron i = step.from_x; i < step.to_x; ++i)
        for (Micron j = step.from_y; j < step.to_y; ++j)
          cells.set(static_cast<std::size_t>((x + i) * width_ + y + j));
    return cells;
  }
  const std::vector<StripPiece>& pieces_;
  Micron width_;
};

/// Shelves in the words of Coffman, Garey, Johnson and Tarjan, Performance bounds for
/// level-oriented two-dimensional packing algorithms, SIAM J. Comput. 9 (1980); best fit from
/// memory.
enum class Fit { Next, First, Best };
Micron on_shelves(std::vector<std::array<Micron, 2>> boxes, Micron width, Fit fit) {
  std::ranges::stable_sort(boxes, std::ranges::greater(), [](const auto& b) { return b[0]; });
  std::vector<Micron> room;
  Micron length = 0;
  for (const auto& [along, across] : boxes) {
    std::optional<std::size_t> on;
    for (std::size_t shelf = fit == Fit::Next && !room.empty() ? room.size() - 1 : 0;
         shelf < room.size(); ++shelf) {
      if (room[shelf] < across) continue;
      if (!on || (fit == Fit::Best && room[shelf] < room[*on])) on = shelf;
    }
    if (!on) {
      on = room.size();
      room.push_back(width);
      length += along;
    }
    room[*on] -= across;
  }
  return length;
}

}  // namespace

TEST_CASE("lay_on_strip (2): up to four boxes, as short as the best of all places") {
  test::for_drawn_cases("strip-boxes", 1000, [](std::mt19937_64& rng) {
    const Micron width = 4 + static_cast<Micron>(rng() % 3);
    const bool turn = rng() % 2 == 0;
    std::vector<StripPiece> pieces;
    for (std::size_t k = 0, count = 1 + rng() % 4; k < count; ++k) {
      const auto along = 1 + static_cast<Micron>(rng() % 4),
                 across = 1 + static_cast<Micron>(rng() % 4);
      pieces.push_back(turn ? box_either_way(along, across) : box(along, across));
    }
    const StripLay lay = lay_on_strip(pieces, {width});
    check_sound(lay, pieces, {width});
    CHECK(lay.shortest);
    CHECK(lay.length == Exhaustive(pieces, width).least());
  });
}

TEST_CASE("lay_on_strip (2): up to four covers with tongues, turned and not") {
  int turned = 0, in_one_anothers_room = 0;
  test::for_drawn_cases("strip-covers", 500, [&](std::mt19937_64& rng) {
    std::vector<StripPiece> pieces;
    std::vector<StripPiece> boxes;
    Micron width = 3;
    for (std::size_t k = 0, count = 1 + rng() % 4; k < count; ++k) {
      const SteppedShape shape = k > 0 && rng() % 2 == 0 ? pieces[0].ways[0] : tongued(rng);
      pieces.push_back({{shape}});
      if (rng() % 2 == 0) pieces.back().ways.push_back(turned_half(shape));
      if (rng() % 3 == 0) pieces.back().ways.push_back(turned_quarter(shape));
      boxes.emplace_back();
      for (const SteppedShape& way : pieces.back().ways) {
        boxes.back().ways.push_back(box_shape(way.along, way.across));
        width = std::max(width, way.across);
      }
    }
    width += static_cast<Micron>(rng() % 3);
    Micron in_line = 0;
    for (const StripPiece& piece : boxes) in_line += piece.ways[0].along;
    if (in_line * width > 130) return;  // the slow truth would be too slow
    const StripLay lay = lay_on_strip(pieces, {width});
    check_sound(lay, pieces, {width});
    CHECK(lay.shortest);
    CHECK(lay.length == Exhaustive(pieces, width).least());
    if (lay.length < lay_on_strip(boxes, {width}).length) ++in_one_anothers_room;
    for (const StripPlace& at : lay.at) turned += at.way > 0 ? 1 : 0;
  });
  CHECK(turned > 5);
  CHECK(in_one_anothers_room > 20);
}

TEST_CASE("lay_on_strip (3): never longer than the best of simple shelves") {
  int sets = 0, shorter = 0;
  test::for_drawn_cases("strip-shelves", test::kDrawnJobs, [&](std::mt19937_64& rng) {
    const Micron width = 1000 + static_cast<Micron>(rng() % 1000);
    std::vector<StripPiece> pieces;
    std::vector<std::array<Micron, 2>> boxes;
    for (std::size_t k = 0, count = 2 + rng() % 15; k < count; ++k) {
      const auto along = 200 + static_cast<Micron>(rng() % 2000);
      const auto across = 100 + static_cast<Micron>(rng() % 800);
      pieces.push_back(box(along, across));
      boxes.push_back({along, across});
    }
    const StripLay lay = lay_on_strip(pieces, {width});
    check_sound(lay, pieces, {width});
    Micron best = std::numeric_limits<Micron>::max();
    for (const Fit fit : {Fit::Next, Fit::First, Fit::Best})
      best = std::min(best, on_shelves(boxes, width, fit));
    CHECK(lay.length <= best);
    shorter += lay.length < best ? 1 : 0;
    ++sets;
  });
  CHECK(shorter > sets / 2);
}

TEST_CASE("pieces lie on one strip each, where a strip has an end") {
  test::for_drawn_cases("strip-ends", 200, [](std::mt19937_64& rng) {
    const Strip strip{900 + static_cast<Micron>(rng() % 500),
                      2000 + static_cast<Micron>(rng() % 1000)};
    std::vector<StripPiece> pieces;
    for (std::size_t k = 0, count = 1 + rng() % 8; k < count; ++k)
      pieces.push_back(
          box(200 + static_cast<Micron>(rng() % 1800), 100 + static_cast<Micron>(rng() % 800)));
    check_sound(lay_on_strip(pieces, strip), pieces, strip);
  });
  // 1210 and 810 side by side on one strip; 700 fits after neither: on the next strip.
  const StripLay lay = lay_on_strip({box(1210, 480), box(810, 480), box(700, 480)}, {1000, 1250});
  CHECK(lay.length == 1250 + 700);
  CHECK(lay.shortest);
}

// E. Hopper and B. C. H. Turton, European Journal of Operational Research 128 (2001) 34-57, class
// C1: strip 20 wide, 16 or 17 boxes that fill a length of exactly 20. A simple placement is known
// to come within a fifth or so of it; that it never beats 20 shows that nothing overlaps.
TEST_CASE("boxes cut from a full strip are laid near the least length") {
  const std::vector<std::vector<std::array<Micron, 2>>> cases = {{{12, 2},
                                                                  {12, 7},
                                                                  {6, 8},
                                                                  {6, 3},
                                                                  {5, 3},
                                                                  {5, 5},
                                                                  {12, 3},
                                                                  {7, 3},
                                                                  {7, 5},
                                                                  {6, 2},
                                                                  {2, 3},
                                                                  {2, 4},
                                                                  {4, 3},
                                                                  {4, 4},
                                                                  {2, 9},
                                                                  {2, 11}},
                                                                 {{1, 4},
                                                                  {1, 4},
                                                                  {5, 4},
                                                                  {4, 9},
                                                                  {5, 3},
                                                                  {9, 3},
                                                                  {4, 1},
                                                                  {3, 5},
                                                                  {5, 5},
                                                                  {2, 7},
                                                                  {2, 7},
                                                                  {3, 9},
                                                                  {13, 3},
                                                                  {8, 2},
                                                                  {4, 15},
                                                                  {4, 5},
                                                                  {6, 10}},
                                                                 {{14, 4},
                                                                  {2, 5},
                                                                  {2, 2},
                                                                  {7, 9},
                                                                  {5, 5},
                                                                  {5, 2},
                                                                  {7, 7},
                                                                  {5, 3},
                                                                  {5, 6},
                                                                  {2, 3},
                                                                  {2, 6},
                                                                  {6, 4},
                                                                  {3, 6},
                                                                  {3, 6},
                                                                  {3, 10},
                                                                  {3, 10}}};
  for (const auto& boxes : cases) {
    Micron area = 0;
    std::vector<StripPiece> pieces;
    for (const auto& [along, across] : boxes) {
      area += along * across;
      pieces.push_back(box(along, across));
    }
    CHECK(area == 400);  // the figures were copied right
    const StripLay lay = lay_on_strip(pieces, {20});
    check_sound(lay, pieces, {20});
    CHECK(lay.length >= 20);
    CHECK(lay.length <= 22);
  }
}

TEST_CASE("hundreds of pieces, all unlike, still lie well") {
  test::for_drawn_cases("strip-many", 1, [](std::mt19937_64& rng) {
    std::vector<StripPiece> pieces;
    for (int k = 0; k < 300; ++k)
      pieces.push_back(box_either_way(200 + static_cast<Micron>(rng() % 2000),
                                      200 + static_cast<Micron>(rng() % 2000)));
    check_sound(lay_on_strip(pieces, {2500}), pieces, {2500});
  });
}

TEST_CASE("nothing takes no strip") { CHECK(lay_on_strip({}, {100}).length == 0); }

}  // namespace swathe
