#pragma once

#include <limits>
#include <vector>

#include "stock/stepped.hpp"

namespace swathe {

/// From one piece's place to another's.
struct Shift {
  Micron along = 0, across = 0;
};

/// A range of shifts that keep two pieces apart, its ends included.
struct ClearShifts {
  Shift least, most;
};
inline constexpr Micron kNoLimit = std::numeric_limits<Micron>::max() / 4;

/// Where a second piece may not be put beside a first one: the no-fit polygon of their steps.
///
/// It is a stack of rows as the pieces are: for every shift across there is one stretch of shifts
/// along at which they overlap. Touching is no overlap.
/// Source: J. A. Bennell and J. F. Oliveira, The geometry of nesting problems: a tutorial, European
///   J. of Operational Research 184 (2008), section 3.4; from memory.
class NoFit {
 public:
  NoFit(const SteppedShape& first, const SteppedShape& second);

  bool overlap(Shift shift) const;
  /// Calls put(from, to) for every stretch of shifts across, ends not in it, that overlap at the
  /// shift `along`.
  template <class Put>
  void overlaps_at(Micron along, Put put) const;
  /// Shifts along at which the second piece may touch the right of the first, each once.
  const std::vector<Micron>& rights() const { return rights_; }
  /// Every shift that keeps them apart, in parts that overlap in their edges alone.
  const std::vector<ClearShifts>& clear() const { return clear_; }

 private:
  /// Shifts across from `from` to `to`, ends not in it unless they are the same.
  struct Row {
    Micron from = 0, to = 0;
    Micron left = 0, right = 0;  ///< shifts along between these overlap
  };
  std::vector<Row> rows_;
  std::vector<Micron> rights_;
  Micron least_left_ = 0;
  std::vector<ClearShifts> clear_;
};

// ---------------------------------------------------------------------------------------------

template <class Put>
void NoFit::overlaps_at(Micron along, Put put) const {
  if (along <= least_left_ || along >= rights_.back()) return;
  bool open = false;
  Micron from = 0, to = 0;
  for (const Row& row : rows_) {
    const bool inside = row.left < along && along < row.right;
    if (inside && !open) from = row.from;
    if (inside) to = row.to;
    if (open && !inside) put(from, to);
    open = inside;
  }
  if (open) put(from, to);
}

}  // namespace swathe
