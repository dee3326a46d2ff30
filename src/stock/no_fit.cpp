#include "stock/no_fit.hpp"

#include <algorithm>

namespace swathe {
namespace {

struct Stretch {
  Micron left = kNoLimit, right = -kNoLimit;
};

/// Shifts along that overlap for all shifts across from `from` to `to`, between two that line an
/// edge up with an edge.
Stretch overlap_between(const SteppedShape& first, const SteppedShape& second, Micron from,
                        Micron to) {
  Stretch stretch;
  for (const Step& a : first.steps)
    for (const Step& b : second.steps) {
      if (a.to_y - b.from_y <= from || a.from_y - b.to_y >= to) continue;
      if (from == to && (a.to_y - b.from_y == from || a.from_y - b.to_y == from)) continue;
      stretch.left = std::min(stretch.left, a.from_x - b.to_x);
      stretch.right = std::max(stretch.right, a.to_x - b.from_x);
    }
  return stretch;
}

}  // namespace

NoFit::NoFit(const SteppedShape& first, const SteppedShape& second) {
  std::vector<Micron> stops;
  for (const Step& a : first.steps)
    for (const Step& b : second.steps)
      stops.insert(stops.end(), {a.to_y - b.from_y, a.from_y - b.to_y});
  std::ranges::sort(stops);
  stops.erase(std::unique(stops.begin(), stops.end()), stops.end());
  const auto add = [&](Micron from, Micron to) {
    const Stretch stretch = overlap_between(first, second, from, to);
    rows_.push_back({from, to, stretch.left, stretch.right});
  };
  for (std::size_t k = 0; k + 1 < stops.size(); ++k) {
    if (k > 0) add(stops[k], stops[k]);
    add(stops[k], stops[k + 1]);
  }
  least_left_ = std::ranges::min_element(rows_, {}, &Row::left)->left;
  for (const Row& row : rows_) rights_.push_back(row.right);
  std::ranges::sort(rights_);
  rights_.erase(std::unique(rights_.begin(), rights_.end()), rights_.end());

  clear_.push_back({{-kNoLimit, stops.back()}, {kNoLimit, kNoLimit}});
  clear_.push_back({{-kNoLimit, -kNoLimit}, {kNoLimit, stops.front()}});
  // Rows with the same edge make one part. A single shift across that fits exactly is a part of
  // its own only where it is freer than both its neighbors.
  const auto edge_parts = [&](auto edge, auto put) {
    for (std::size_t k = 0; k < rows_.size();) {
      const Micron at = edge(rows_[k]);
      std::size_t end = k;
      while (end + 1 < rows_.size() && edge(rows_[end + 1]) == at) ++end;
      const bool exact = rows_[k].from == rows_[end].to;
      if (!exact || (edge(rows_[k - 1]) > at && edge(rows_[end + 1]) > at))
        put(at, rows_[k].from, rows_[end].to);
      k = end + 1;
    }
  };
  edge_parts([](const Row& row) { return row.right; },
             [&](Micron at, Micron from, Micron to) {
               clear_.push_back({{at, from}, {kNoLimit, to}});
             });
  edge_parts([](const Row& row) { return -row.left; },
             [&](Micron at, Micron from, Micron to) {
               clear_.push_back({{-kNoLimit, from}, {-at, to}});
             });
}

bool NoFit::overlap(Shift shift) const {
  auto row = std::ranges::lower_bound(rows_, shift.across, {}, &Row::to);
  if (row != rows_.end() && row->to == shift.across) ++row;  // at its end: the next row decides
  if (row == rows_.end() || row->from > shift.across) return false;
  if (row->from == shift.across && row->to != shift.across) return false;
  return row->left < shift.along && shift.along < row->right;
}

}  // namespace swathe
