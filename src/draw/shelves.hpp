#pragma once

#include <cstddef>
#include <vector>

#include "swathe/plane.hpp"

namespace swathe {

/// Where a piece goes: which page, and its lower left corner there.
struct Shelved {
  std::size_t page = 0;
  FlatPoint at;
};

/// Pieces laid on pages from the upper left, in rows, in their order; a row is as high as its
/// highest piece. `first` is the first page's room, `later` every other's.
///
/// Requires: every piece fits a later page's room.
/// Holds (shelves_test.cpp): no two pieces of a page overlap or come nearer than `gap`, and all lie
///   in the page's room.
std::vector<Shelved> shelve(const std::vector<FlatPoint>& sizes, const plane::Box& first,
                            const plane::Box& later, double gap);

/// The same, but a piece alone on the last page is laid among the others where they leave it room;
/// nearest the end, if there are several such places.
std::vector<Shelved> shelve_on_fewer(const std::vector<FlatPoint>& sizes, const plane::Box& first,
                                     const plane::Box& later, double gap);

}  // namespace swathe
