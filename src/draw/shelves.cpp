#include "draw/shelves.hpp"

#include <algorithm>

namespace swathe {
namespace {

constexpr double kSlack = 1e-9;

}  // namespace

std::vector<Shelved> shelve(const std::vector<FlatPoint>& sizes, const plane::Box& first,
                            const plane::Box& later, double gap) {
  std::vector<Shelved> places;
  std::size_t page = 0;
  double x = first.lo.x, top = first.hi.y, row = 0;
  for (const FlatPoint size : sizes) {
    while (true) {
      const plane::Box& room = page == 0 ? first : later;
      if (x > room.lo.x && x + size.x > room.hi.x + kSlack) {  // next row
        x = room.lo.x;
        top -= row + gap;
        row = 0;
      }
      const bool fits = top - size.y >= room.lo.y - kSlack && x + size.x <= room.hi.x + kSlack;
      const bool fresh = page > 0 && x == room.lo.x && top == room.hi.y;
      if (fits || fresh) break;
      ++page;
      x = later.lo.x;
      top = later.hi.y;
      row = 0;
    }
    places.push_back({page, {x, top - size.y}});
    x += size.x + gap;
    row = std::max(row, size.y);
  }
  return places;
}

std::vector<Shelved> shelve_on_fewer(const std::vector<FlatPoint>& sizes, const plane::Box& first,
                                     const plane::Box& later, double gap) {
  const std::vector<Shelved> in_order = shelve(sizes, first, later, gap);
  const std::size_t count = sizes.size();
  if (count < 2 || in_order[count - 2].page == in_order.back().page) return in_order;
  for (std::size_t at = count - 1; at-- > 0;) {
    std::vector<FlatPoint> moved = sizes;
    std::rotate(moved.begin() + static_cast<std::ptrdiff_t>(at), moved.end() - 1, moved.end());
    std::vector<Shelved> places = shelve(moved, first, later, gap);
    if (places.back().page >= in_order.back().page) continue;
    std::rotate(places.begin() + static_cast<std::ptrdiff_t>(at),
                places.begin() + static_cast<std::ptrdiff_t>(at) + 1, places.end());
    return places;
  }
  return in_order;
}

}  // namespace swathe
