#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "sheet/tile_grid.hpp"
#include "sheet/tile_search.hpp"

// What the search for the fewest tiles knows of the ink: by columns of tiles, and there by depth.
namespace swathe {

/// A span of ink, by its depth below the highest.
struct InkSpan {
  double from, to;
};

/// Spans of one column in as few as have a whole row of tiles between them: a narrower gap
/// holds no tile, so it changes nothing.
class InkColumn {
 public:
  explicit InkColumn(double gap) : gap_(gap) {}

  void clear() { spans_.clear(); }
  void add(InkSpan s) {
    if (spans_.size() == 1 && near(spans_.front(), s)) {
      InkSpan& only = spans_.front();
      only = {std::min(only.from, s.from), std::max(only.to, s.to)};
      return;
    }
    // Whatever it comes near becomes one with it.
    const auto first =
        std::ranges::find_if(spans_, [&](const InkSpan& t) { return t.to + gap_ > s.from; });
    auto last = first;
    for (; last != spans_.end() && near(*last, s); ++last)
      s = {std::min(s.from, last->from), std::max(s.to, last->to)};
    spans_.insert(spans_.erase(first, last), s);
  }
  const std::vector<InkSpan>& spans() const { return spans_; }

 private:
  bool near(const InkSpan& a, const InkSpan& b) const {
    return a.to + gap_ > b.from && b.to + gap_ > a.from;
  }

  double gap_;
  std::vector<InkSpan> spans_;  ///< rising
};

/// Where there is ink, column by column.
class ColumnInk {
 public:
  /// Ink lies from `top` downwards. The last row is higher by the overlap: what lies below `lowest`
  /// lies in the row of that.
  ColumnInk(const Ink& ink, double top, double lowest, double step_y)
      : ink_(ink), top_(top), lowest_(lowest), gap_(step_y) {
    for (const Ink::Cluster& cluster : ink.clusters) {
      InkColumn down(gap_);
      for (std::size_t k = cluster.first; k < cluster.last; ++k)
        down.add(span(ink.strokes[k].a.y, ink.strokes[k].b.y));
      clusters_.push_back(down.spans());
    }
  }

  /// For a grid's start, step and number of columns.
  void set_columns(const TileGrid& grid) {
    columns_.resize(grid.columns, InkColumn(gap_));
    for (InkColumn& column : columns_) column.clear();
    for (std::size_t n = 0; n < clusters_.size(); ++n) {
      const Ink::Cluster& cluster = ink_.clusters[n];
      const std::size_t left = grid.column_of(cluster.box.lo.x);
      if (left == grid.column_of(cluster.box.hi.x)) {
        for (const InkSpan s : clusters_[n]) columns_[left].add(s);
      } else {
        for (std::size_t k = cluster.first; k < cluster.last; ++k) add(grid, ink_.strokes[k]);
      }
    }
  }
  const std::vector<InkColumn>& columns() const { return columns_; }

  /// Whether a box lies beyond all ink of its column: there may be no tile for it.
  bool is_off(const TileGrid& grid, const Box& box) const {
    const InkSpan own = span(box.lo.y, box.hi.y);
    return std::ranges::none_of(columns_[grid.column_of(box.lo.x)].spans(), [&](const InkSpan s) {
      return s.from <= own.to && own.from <= s.to;
    });
  }
  /// Whether there is none for its upper edge.
  bool has_no_tile(const TileGrid& grid, const Box& box) const {
    const std::size_t row = grid.row_of(box.hi.y);
    return std::ranges::none_of(columns_[grid.column_of(box.lo.x)].spans(), [&](const InkSpan s) {
      return grid.row_of(top_ - s.from) <= row && row <= grid.row_of(top_ - s.to);
    });
  }

  /// Marks every cell that has ink.
  void mark(TileGrid& grid) const {
    grid.used.assign(grid.columns * grid.rows, 0);
    for (std::size_t c = 0; c < grid.columns; ++c)
      for (const InkSpan s : columns_[c].spans())
        for (std::size_t r = grid.row_of(top_ - s.from); r <= grid.row_of(top_ - s.to); ++r)
          grid.used[r * grid.columns + c] = 1;
  }

 private:
  InkSpan span(double y, double other) const {
    return {std::min(lowest_, top_ - std::max(y, other)),
            std::min(lowest_, top_ - std::min(y, other))};
  }

  /// The span of the stroke within each column.
  void add(const TileGrid& grid, const InkStroke& stroke) {
    const bool rightwards = stroke.a.x < stroke.b.x;
    const FlatPoint &left = rightwards ? stroke.a : stroke.b,
                    &right = rightwards ? stroke.b : stroke.a;
    const std::size_t first = grid.column_of(left.x), last = grid.column_of(right.x);
    const double slope = first == last ? 0.0 : (right.y - left.y) / (right.x - left.x);
    double from = left.y;
    for (std::size_t c = first; c < last; ++c) {
      const double edge = grid.start.x + static_cast<double>(c + 1) * grid.step_x;
      const double to = left.y + slope * (edge - left.x);
      columns_[c].add(span(from, to));
      from = to;
    }
    columns_[last].add(span(from, right.y));
  }

  const Ink& ink_;
  double top_, lowest_, gap_;
  std::vector<std::vector<InkSpan>> clusters_;  ///< what each cluster covers
  std::vector<InkColumn> columns_;
};

/// How many cells the columns' ink needs, for all shifts of the first row at once.
///
/// A span needs a row more from that shift on which puts an edge across its lower end, and one
/// less from that which takes its upper end into the next row.
class RowCount {
 public:
  RowCount(const std::vector<double>& shifts, double step)
      : shifts_(shifts), step_(step), counts_(shifts.size() + 1) {}

  const std::vector<int>& of(const std::vector<InkColumn>& columns) {
    std::ranges::fill(counts_, 0);
    for (const InkColumn& column : columns)
      for (const InkSpan s : column.spans()) {
        add(s.to, 1);
        add(s.from, -1);
        ++counts_.front();
      }
    for (std::size_t k = 1; k < counts_.size(); ++k) counts_[k] += counts_[k - 1];
    return counts_;
  }

 private:
  /// The row of that depth, for each shift.
  void add(double depth, int sign) {
    const double row = std::floor(depth / step_);
    counts_.front() += sign * static_cast<int>(row);
    const auto next = std::ranges::lower_bound(shifts_, step_ * (row + 1) - depth);
    counts_[static_cast<std::size_t>(next - shifts_.begin())] += sign;
  }

  const std::vector<double>& shifts_;
  double step_;
  std::vector<int> counts_;
};

}  // namespace swathe
