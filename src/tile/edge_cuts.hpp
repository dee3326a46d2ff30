#pragma once

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

#include "tile/tile_search.hpp"

// Which of the boxes to keep whole are cut by the edges between columns, or between rows, of tiles.
namespace swathe {

/// What the edges one way cut, for every shift of the first tile.
///
/// A box becomes cut, or whole again, only where a growing shift takes one of its ends from a tile
/// into the next. So few changes are kept, and not every box for every shift.
class EdgeCuts {
 public:
  struct Change {
    std::size_t shift;  ///< from this one on
    std::size_t box;
    bool cut;
  };

  EdgeCuts() = default;
  /// `ends(box)` are a box's two ends, `tile_of(end, shift)` the number of the tile that holds an
  /// end: with a greater shift it is never less.
  template <class Ends, class TileOf>
  EdgeCuts(const std::vector<WholeBox>& boxes, std::size_t shifts, Ends ends, TileOf tile_of) {
    const auto next_tile = [&](double end, std::size_t shift) {
      std::size_t same = shift, other = shifts;
      const std::size_t tile = tile_of(end, shift);
      while (other - same > 1) {
        const std::size_t middle = same + (other - same) / 2;
        (tile_of(end, middle) == tile ? same : other) = middle;
      }
      return other;
    };
    for (std::size_t k = 0; k < boxes.size(); ++k) {
      const auto [from, to] = ends(boxes[k].box);
      bool cut = false;
      for (std::size_t shift = 0; shift < shifts;
           shift = std::min(next_tile(from, shift), next_tile(to, shift)))
        if ((tile_of(from, shift) != tile_of(to, shift)) != cut) {
          cut = !cut;
          changes_.push_back({shift, k, cut});
        }
    }
    std::ranges::sort(changes_, {}, &Change::shift);
  }

  const std::vector<Change>& changes() const { return changes_; }  ///< by rising shift

 private:
  std::vector<Change> changes_;
};

/// The boxes cut at one shift after another.
class CutBoxes {
 public:
  CutBoxes(const EdgeCuts& cuts, const std::vector<WholeBox>& boxes)
      : changes_(cuts.changes()), boxes_(boxes), cut_(boxes.size(), 0) {}

  /// Goes on to a shift that is no less than the one before.
  void go_to(std::size_t shift) {
    for (; next_ < changes_.size() && changes_[next_].shift <= shift; ++next_) {
      const EdgeCuts::Change& change = changes_[next_];
      cut_[change.box] = change.cut;
      weight_ += change.cut ? boxes_[change.box].weight : -boxes_[change.box].weight;
    }
  }
  bool holds(std::size_t box) const { return cut_[box] != 0; }
  int weight() const { return weight_; }

 private:
  const std::vector<EdgeCuts::Change>& changes_;
  const std::vector<WholeBox>& boxes_;
  std::vector<char> cut_;
  std::size_t next_ = 0;
  int weight_ = 0;
};

}  // namespace swathe
