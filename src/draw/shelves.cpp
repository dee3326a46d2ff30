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

}  // namespace swathe
