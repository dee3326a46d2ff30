#include "stock/strip_shelves.hpp"

#include <algorithm>
#include <functional>
#include <numeric>

namespace swathe {
namespace {

/// Pieces side by side across the strip, as deep as the first of them is long.
struct Shelf {
  Micron x = 0, taken = 0;
};

}  // namespace

Layout lay_on_shelves(const StripTable& table, const Strip& strip, ShelfRule rule) {
  std::vector<std::size_t> order(table.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto shape = [&](std::size_t piece) { return table.shape(table.ways(piece).front()); };
  std::ranges::stable_sort(order, std::ranges::greater(),
                           [&](std::size_t piece) { return shape(piece).along; });
  Layout layout(table.size());
  std::vector<Shelf> shelves;
  Micron end = 0;
  for (const std::size_t piece : order) {
    const SteppedShape now = shape(piece);
    const auto has_room = [&](const Shelf& shelf) {
      return shelf.taken + now.across <= strip.width;
    };
    auto chosen = shelves.end();
    if (rule == ShelfRule::Next && !shelves.empty() && has_room(shelves.back()))
      chosen = shelves.end() - 1;
    if (rule == ShelfRule::First) chosen = std::ranges::find_if(shelves, has_room);
    if (rule == ShelfRule::Best)
      for (auto shelf = shelves.begin(); shelf != shelves.end(); ++shelf)
        if (has_room(*shelf) && (chosen == shelves.end() || shelf->taken > chosen->taken))
          chosen = shelf;
    if (chosen == shelves.end()) {
      const Micron x = on_one_strip(end, now.along, strip);
      chosen = shelves.insert(shelves.end(), {x, 0});
      end = x + now.along;
    }
    layout[piece] = {table.ways(piece).front(), chosen->x, chosen->taken};
    chosen->taken += now.across;
  }
  return layout;
}

}  // namespace swathe
