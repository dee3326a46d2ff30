#include "stock/strip.hpp"

#include <algorithm>
#include <functional>
#include <numeric>
#include <random>

#include "stock/earliest_places.hpp"
#include "stock/shortest_lay.hpp"
#include "stock/strip_shelves.hpp"

namespace swathe {
namespace {

using Order = std::vector<std::size_t>;
using Shapes = std::vector<std::size_t>;  ///< a piece's shape, or kAnyShape

constexpr long kTrials = 200'000;      // stretches looked at while orders are tried
constexpr std::size_t kFew = 4;        // pieces whose shortest lay is looked for at once
constexpr long kFewSearched = 60'000;  // lays looked at in search of it
constexpr std::size_t kSome = 8;       // pieces whose shortest lay may be found in the end
constexpr long kSomeSearched = 20'000;

/// What a lay is judged by: its length, then how early its pieces end together.
std::pair<Micron, Micron> judged(const Layout& layout, const StripTable& table) {
  Micron ends = 0;
  for (const Laid& laid : layout) ends += laid.x + table.shape(laid.shape).along;
  return {length_of(layout, table), ends};
}

/// As given; then long, wide and large pieces first.
std::vector<Order> likely_orders(const StripTable& table) {
  Order given(table.size());
  std::iota(given.begin(), given.end(), std::size_t{0});
  std::vector<Order> orders = {given};
  const auto add = [&](auto measure) {
    Order order = given;
    std::ranges::stable_sort(order, std::ranges::greater(), [&](std::size_t piece) {
      return measure(table.shape(table.ways(piece).front()));
    });
    orders.push_back(std::move(order));
  };
  add([](const SteppedShape& shape) { return shape.along; });
  add([](const SteppedShape& shape) { return shape.across; });
  add([](const SteppedShape& shape) {
    return static_cast<double>(shape.along) * static_cast<double>(shape.across);
  });
  add([](const SteppedShape& shape) { return shape.along + shape.across; });
  return orders;
}

/// Every piece in its first way; in the way that takes least of the strip; in any way.
std::vector<Shapes> likely_shapes(const StripTable& table) {
  Shapes first, shortest;
  for (std::size_t piece = 0; piece < table.size(); ++piece) {
    const auto& ways = table.ways(piece);
    first.push_back(ways.front());
    shortest.push_back(*std::ranges::min_element(
        ways, {}, [&](std::size_t way) { return table.shape(way).along; }));
  }
  return {first, shortest, Shapes(table.size(), kAnyShape)};
}

/// The best lay so far.
class Best {
 public:
  Best(const StripTable& table, const Strip& strip)
      : table_(table), places_(table, strip), enough_(table.at_least(strip)) {}

  bool attempt(Layout layout) {
    const auto value = judged(layout, table_);
    if (!layout_.empty() && value > value_) return false;
    if (layout_.empty() || value < value_) layout_ = std::move(layout);
    value_ = value;
    return true;
  }
  bool attempt(const Order& order, const Shapes& shapes) {
    return attempt(places_.lay(order, shapes));
  }
  bool enough() const { return value_.first <= enough_; }
  long work() const { return places_.work(); }
  Layout& layout() { return layout_; }

 private:
  const StripTable& table_;
  EarliestPlaces places_;
  Micron enough_;
  Layout layout_;
  std::pair<Micron, Micron> value_;
};

/// Pieces in the order in which the lay has them, each as it lies there.
std::pair<Order, Shapes> read_off(const Layout& layout) {
  Order order(layout.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(
      order, {}, [&](std::size_t piece) { return std::pair(layout[piece].x, layout[piece].y); });
  Shapes shapes;
  for (const Laid& laid : layout) shapes.push_back(laid.shape);
  return {order, shapes};
}

/// Changes the best lay a little, again and again: two pieces change places in the order, or one is
/// turned.
void try_changes(Best& best, const StripTable& table) {
  std::mt19937 dice;  // the same numbers on every machine
  auto [order, shapes] = read_off(best.layout());
  const std::size_t count = order.size();
  while (count > 1 && !best.enough() && best.work() < kTrials) {
    Order changed = order;
    Shapes turned = shapes;
    const std::size_t one = dice() % count, other = dice() % count;
    std::swap(changed[one], changed[other]);
    const auto& ways = table.ways(one);
    if (ways.size() > 1 && dice() % 2 == 0) turned[one] = ways[dice() % ways.size()];
    if (!best.attempt(changed, turned)) continue;
    order = std::move(changed);
    shapes = std::move(turned);
  }
}

void try_orders(Best& best, const StripTable& table) {
  for (const Shapes& shapes : likely_shapes(table))
    for (const Order& order : likely_orders(table))
      if (best.layout().empty() || (!best.enough() && best.work() < kTrials))
        best.attempt(order, shapes);
}

/// Makes the best lay shorter; true where none is shorter still.
bool shorten(Best& best, const StripTable& table, const Strip& strip) {
  const auto search = [&](std::size_t most, long budget) {
    return best.enough() ||
           (table.size() <= most && ShortestLay(table, strip, budget).improve(best.layout()));
  };
  if (search(kFew, kFewSearched)) return true;
  try_changes(best, table);
  return search(kSome, kSomeSearched);
}

}  // namespace

StripLay lay_on_strip(const std::vector<StripPiece>& pieces, const Strip& strip) {
  StripLay lay;
  lay.shortest = true;
  if (pieces.empty()) return lay;
  const StripTable table(pieces);
  Best best(table, strip);
  if (table.has_no_fits()) try_orders(best, table);
  for (const ShelfRule rule : {ShelfRule::Next, ShelfRule::First, ShelfRule::Best})
    best.attempt(lay_on_shelves(table, strip, rule));
  lay.shortest = table.has_no_fits() ? shorten(best, table, strip) : best.enough();
  for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
    const Laid& laid = best.layout()[piece];
    lay.at.push_back({table.way_of(piece, laid.shape), laid.x, laid.y});
  }
  lay.length = length_of(best.layout(), table);
  return lay;
}

}  // namespace swathe
