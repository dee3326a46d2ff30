#pragma once

#include <vector>

#include "stock/strip_table.hpp"

namespace swathe {

/// Looks for the shortest lay. Where two pieces overlap, it tries every part of the room in which
/// they do not; where none do, all lie as near to the start as they can.
class ShortestLay {
 public:
  /// `budget`: lays that may be looked at in all.
  ShortestLay(const StripTable& table, const Strip& strip, long budget)
      : table_(table), strip_(strip), budget_(budget) {}

  /// Makes `best` the shortest lay there is; false where the budget is spent before that is known.
  bool improve(Layout& best);

 private:
  /// `to` lies at least so far on from `from`.
  struct Bound {
    std::size_t from = 0, to = 0;
    Micron least = 0;
  };

  void each_way(std::size_t piece);
  void search();
  void put_apart(std::size_t first, std::size_t second);
  bool may_help(std::size_t first, std::size_t second, const ClearShifts& part) const;
  bool settle_across();
  bool settle_along();

  const StripTable& table_;
  Strip strip_;
  long budget_;
  Layout now_;
  std::vector<Bound> along_, across_;
  Layout* best_ = nullptr;
  Micron shortest_ = 0, floor_ = 0;
};

}  // namespace swathe
