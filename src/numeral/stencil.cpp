#include "numeral/stencil.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <optional>

#include "base/limits.hpp"
#include "base/maths.hpp"
#include "numeral/bridge_candidates.hpp"
#include "plane/clip.hpp"

namespace swathe {
namespace {

/// Pieces of sheet tied together, by union and find.
class Ties {
 public:
  explicit Ties(int pieces) : parent_(static_cast<std::size_t>(pieces)), left_(pieces) {
    std::iota(parent_.begin(), parent_.end(), 0);
  }
  void tie(int a, int b) {
    a = root(a);
    b = root(b);
    if (a == b) return;
    parent_[static_cast<std::size_t>(a)] = b;
    --left_;
  }
  bool one_piece() const { return left_ == 1; }

 private:
  int root(int i) const {
    while (parent_[static_cast<std::size_t>(i)] != i) i = parent_[static_cast<std::size_t>(i)];
    return i;
  }
  std::vector<int> parent_;
  int left_;
};

using Choice = std::vector<const BridgeCandidate*>;

/// Whether all pieces still hang together when any one bridge breaks.
bool holds(const Choice& choice, int pieces) {
  for (std::size_t lost = 0; lost < choice.size(); ++lost) {
    Ties ties(pieces);
    for (std::size_t i = 0; i < choice.size(); ++i) {
      if (i != lost) ties.tie(choice[i]->a, choice[i]->b);
    }
    if (!ties.one_piece()) return false;
  }
  return true;
}

/// 0 where two bridges grip the island from opposite sides, up to 1 where all stand side by side.
double lopsided(const Choice& choice, int island, FlatPoint middle) {
  double widest = 0;
  for (const BridgeCandidate* p : choice) {
    for (const BridgeCandidate* q : choice) {
      const auto grip = [&](const BridgeCandidate& c) {
        return (c.a == island ? c.bridge.from : c.bridge.to) - middle;
      };
      if ((p->a != island && p->b != island) || (q->a != island && q->b != island)) continue;
      const FlatPoint g = grip(*p), h = grip(*q);
      widest = std::max(widest, std::abs(maths::atan2(cross(g, h), dot(g, h))));
    }
  }
  return 1 - widest / std::numbers::pi;
}

struct Priced {
  Choice choice;
  double cost = 0;
};

double cost_of(const Choice& choice, const plane::Region& outline, const SheetPieces& pieces) {
  double bars = 0, grips = 0;
  for (const BridgeCandidate* c : choice) bars += c->cost;
  for (int island = 1; island <= pieces.islands(); ++island) {
    const std::size_t contour =
        static_cast<std::size_t>(pieces.island[static_cast<std::size_t>(island - 1)]);
    grips += lopsided(choice, island, bounds(outline[contour]).middle());
  }
  return bars * (1 + grips / static_cast<double>(choice.size()));
}

/// The cheapest bars between each two pieces, none of them near another of the same two.
std::vector<BridgeCandidate> few_best(std::vector<BridgeCandidate> all, int islands, double width) {
  static constexpr int kKept[] = {0, 8, 6, 3, 2};
  std::vector<BridgeCandidate> kept;
  for (BridgeCandidate& c : all) {
    int same = 0;
    bool near = false;
    for (const BridgeCandidate& k : kept) {
      if (std::minmax(k.a, k.b) != std::minmax(c.a, c.b)) continue;
      ++same;
      near = near || !stand_apart(k.bridge, c.bridge, width);
    }
    if (!near && same < kKept[islands]) kept.push_back(std::move(c));
  }
  return kept;
}

/// Every choice of at most two bars an island that holds, with bars apart; cheapest first.
std::vector<Priced> choices(const std::vector<BridgeCandidate>& bars, const plane::Region& outline,
                            const SheetPieces& pieces, double width) {
  std::vector<Priced> found;
  Choice choice;
  const auto extend = [&](const auto& self, std::size_t from) -> void {
    if (choice.size() > static_cast<std::size_t>(pieces.islands()) &&
        holds(choice, pieces.islands() + 1)) {
      found.push_back({choice, cost_of(choice, outline, pieces)});
      return;  // one more bar would only weaken the digit
    }
    if (choice.size() == 2 * static_cast<std::size_t>(pieces.islands())) return;
    for (std::size_t i = from; i < bars.size(); ++i) {
      const bool apart = std::all_of(choice.begin(), choice.end(), [&](const BridgeCandidate* c) {
        return stand_apart(c->bridge, bars[i].bridge, width);
      });
      if (!apart) continue;
      choice.push_back(&bars[i]);
      self(self, i + 1);
      choice.pop_back();
    }
  };
  extend(extend, 0);
  std::stable_sort(found.begin(), found.end(), [](auto& p, auto& q) {
    return std::round(p.cost * 1e6) < std::round(q.cost * 1e6);
  });
  return found;
}

/// Whether cutting round the bars leaves no scrap that the digit itself did not have.
bool leaves_no_scrap(const plane::Region& cut, const plane::Region& outline, double width) {
  const auto scraps = [&](const plane::Region& region) {
    return std::count_if(region.begin(), region.end(), [&](const plane::Polygon& contour) {
      const double size = area(contour);
      return size > 0 && size < width * width;
    });
  };
  return scraps(cut) <= scraps(outline);
}

std::optional<Stencil> bridged(const plane::Region& outline, const SheetPieces& pieces,
                               double width) {
  const std::vector<BridgeCandidate> bars =
      few_best(bridge_candidates(outline, pieces, width), pieces.islands(), width);
  for (const Priced& priced : choices(bars, outline, pieces, width)) {
    Stencil stencil;
    stencil.counters = pieces.islands();
    plane::Region taken;
    for (const BridgeCandidate* c : priced.choice) {
      stencil.bridges.push_back(c->bridge);
      taken.push_back(c->bridge.bar);
    }
    stencil.cut = subtract(outline, taken);
    if (leaves_no_scrap(stencil.cut, outline, width)) return stencil;
  }
  return std::nullopt;
}

/// The widest narrower bridge that fits, in whole steps of 1/32 in or 0.5 mm; nothing where none
/// does.
std::optional<Length> widest_that_fits(const plane::Region& outline, const SheetPieces& pieces,
                                       double width, Units units) {
  const Length step = units == Units::Inches ? inches(1.0 / 32) : mm(0.5);
  const auto fits = [&](int steps) {
    return bridged(outline, pieces, (steps * step).mm()).has_value();
  };
  const plane::Box box = bounds(outline);
  int least = 1;
  int too_wide = static_cast<int>(std::min(width, std::max(box.width(), box.height())) / step.mm());
  if (too_wide <= least || !fits(least)) return std::nullopt;
  while (too_wide - least > 1) {
    const int middle = (least + too_wide) / 2;
    (fits(middle) ? least : too_wide) = middle;
  }
  return least * step;
}

}  // namespace

Outcome<Stencil> make_stencil(const plane::Region& outline, double width, Units units) {
  if (!(width > 0)) {
    return refuse(Why::OutOfRange, "a stencil bridge has no width, expected more than 0");
  }
  const SheetPieces pieces = sheet_pieces(outline);
  if (pieces.islands() == 0) return Stencil{0, {}, outline};
  if (pieces.islands() > kMostIslands) {
    return refuse(Why::TooLarge, fmt::format("a digit has {} islands, expected at most {}",
                                             pieces.islands(), kMostIslands));
  }
  if (auto stencil = bridged(outline, pieces, width)) return *std::move(stencil);
  const auto would_do = widest_that_fits(outline, pieces, width, units);
  return refuse(Why::DoesNotFit,
                fmt::format("bridges {} wide cannot hold its {}, expected {}",
                            exact(mm(width), units), pieces.islands() == 1 ? "island" : "islands",
                            would_do ? fmt::format("bridges {} wide", exact(*would_do, units))
                                     : "a font with no islands"));
}

std::optional<Stencil> try_stencil(const plane::Region& outline, double width) {
  const SheetPieces pieces = sheet_pieces(outline);
  if (pieces.islands() == 0) return Stencil{0, {}, outline};
  if (!(width > 0) || pieces.islands() > kMostIslands) return std::nullopt;
  return bridged(outline, pieces, width);
}

type::Stroke less_bridges(const type::Stroke& stroke, const std::vector<Bridge>& bridges) {
  std::vector<StrokePiece> pieces = stroke.pieces();
  for (StrokePiece& piece : pieces) {
    const bool covered = std::any_of(bridges.begin(), bridges.end(), [&](const Bridge& bridge) {
      return contains(bridge.bar, piece.at);
    });
    if (covered) piece.width = 0;
  }
  return type::Stroke(std::move(pieces));
}

}  // namespace swathe
