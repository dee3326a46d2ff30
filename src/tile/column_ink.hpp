#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

#include "tile/tile_grid.hpp"
#include "tile/tile_search.hpp"

// How the search for the fewest tiles sees the ink: column of tiles by column, each by depth.
namespace swathe {

/// A span of ink, by its depth below the highest.
struct InkSpan {
  double from, to;
  friend bool operator==(const InkSpan&, const InkSpan&) = default;
};

/// How depths are measured.
struct InkDepths {
  double top;     ///< ink lies from there downwards
  double lowest;  ///< the last row is higher by the overlap: ink below this counts as at it
  double gap;     ///< a row of tiles

  InkSpan span(double y, double other) const {
    return {std::min(lowest, top - std::max(y, other)), std::min(lowest, top - std::min(y, other))};
  }
};

/// The ink of one column as spans. Two spans with less than a row of tiles between them are kept
/// as one: such a gap is never a tile without ink, so closing it changes no count.
class InkColumn {
 public:
  explicit InkColumn(const InkDepths& depths) : gap_(depths.gap) {}

  void add(const InkColumn& other) {
    for (const InkSpan s : other.spans_) add(s);
  }
  void add(InkSpan s) {
    const auto first =
        std::ranges::find_if(spans_, [&](const InkSpan& t) { return t.to + gap_ > s.from; });
    if (first == spans_.end() || !near(*first, s)) {
      spans_.insert(first, s);
      return;
    }
    // Every span that it now comes near is joined to it.
    *first = {std::min(s.from, first->from), std::max(s.to, first->to)};
    auto next = first + 1;
    for (; next != spans_.end() && near(*next, *first); ++next)
      first->to = std::max(first->to, next->to);
    if (next != first + 1) spans_.erase(first + 1, next);
  }
  void clear() { spans_.clear(); }
  /// Whether adding the other would change nothing.
  bool holds(const InkColumn& other) const {
    return std::ranges::all_of(other.spans_, [&](const InkSpan& s) {
      return std::ranges::any_of(
          spans_, [&](const InkSpan& t) { return t.from <= s.from && s.to <= t.to; });
    });
  }
  const std::vector<InkSpan>& spans() const { return spans_; }
  friend bool operator==(const InkColumn& a, const InkColumn& b) { return a.spans_ == b.spans_; }

 private:
  bool near(const InkSpan& a, const InkSpan& b) const {
    return a.to + gap_ > b.from && b.to + gap_ > a.from;
  }

  double gap_;
  std::vector<InkSpan> spans_;  ///< rising
};

/// Where there is ink, for columns at any place: it is kept in narrow strips, and for runs of whole
/// strips what these hold together.
///
/// The runs lie in blocks of a tile's width: from each strip to its block's end, and from its
/// block's start to it. A column is then put together from two runs and, where they add something,
/// the strokes of the two strips that its edges divide.
class InkStrips {
 public:
  InkStrips(const Ink& ink, double step_x, const InkDepths& depths)
      : depths_(depths),
        left_(ink.bounds().lo.x),
        block_(std::max<std::size_t>(1, static_cast<std::size_t>(step_x / kStrip))) {
    sort_into_strips(ink);
    hold_together();
  }

  /// Adds what lies in [from, to).
  void add_to(InkColumn& column, double from, double to) const {
    if (strips_.empty()) return;
    const std::size_t first = strip_of(from), last = std::min(strip_of(to), strips_.size() - 1);
    if (first >= strips_.size()) return;
    if (last > first + 1) add_whole(column, first + 1, last - 1);
    add_edge(column, first, from, to);
    if (last > first) add_edge(column, last, from, to);
  }

 private:
  static constexpr double kStrip = 4.0;

  struct Strip {
    std::size_t first = 0, last = 0;  ///< of the strokes that cross it
    InkColumn own, from_block_start, to_block_end;
  };

  /// Counted first, so that the strokes of all strips lie in one list, strip by strip.
  void sort_into_strips(const Ink& ink) {
    const auto each = [&](auto act) {
      for (const InkStroke& stroke : ink.strokes) {
        const InkStroke rightwards =
            stroke.a.x <= stroke.b.x ? stroke : InkStroke{stroke.b, stroke.a};
        const std::size_t last = strip_of(rightwards.b.x);
        for (std::size_t s = strip_of(rightwards.a.x); s <= last; ++s) act(s, rightwards);
      }
    };
    std::vector<std::size_t> counts;
    each([&](std::size_t s, const InkStroke&) {
      if (counts.size() <= s) counts.resize(s + 1, 0);
      ++counts[s];
    });
    const InkColumn empty(depths_);
    strips_.reserve(counts.size());
    std::size_t all = 0;
    for (const std::size_t count : counts) {
      strips_.push_back({all, all, empty, empty, empty});
      all += count;
    }
    strokes_.resize(all);
    each([&](std::size_t s, const InkStroke& stroke) { strokes_[strips_[s].last++] = stroke; });
  }

  std::size_t strip_of(double x) const {
    return static_cast<std::size_t>(std::max(0.0, (x - left_) / kStrip));
  }

  void hold_together() {
    for (std::size_t s = 0; s < strips_.size(); ++s) {
      const double from = left_ + static_cast<double>(s) * kStrip;
      add_part(strips_[s].own, s, from, from + kStrip);
      strips_[s].from_block_start.add(strips_[s].own);
      if (s % block_ > 0) strips_[s].from_block_start.add(strips_[s - 1].from_block_start);
    }
    for (std::size_t s = strips_.size(); s-- > 0;) {
      strips_[s].to_block_end.add(strips_[s].own);
      if (s + 1 < strips_.size() && (s + 1) % block_ > 0)
        strips_[s].to_block_end.add(strips_[s + 1].to_block_end);
    }
  }

  void add_whole(InkColumn& column, std::size_t first, std::size_t last) const {
    const std::size_t block = first / block_, end = last / block_;
    if (block == end) {
      for (std::size_t s = first; s <= last; ++s) column.add(strips_[s].own);
      return;
    }
    column.add(strips_[first].to_block_end);
    for (std::size_t b = block + 1; b < end; ++b) column.add(strips_[b * block_].to_block_end);
    column.add(strips_[last].from_block_start);
  }

  /// Of a strip at an edge, what lies in [from, to). Mostly the strips between the edges hold as
  /// much as the whole of it, and then its strokes need not be looked at.
  void add_edge(InkColumn& column, std::size_t strip, double from, double to) const {
    if (!column.holds(strips_[strip].own)) add_part(column, strip, from, to);
  }

  /// Of the strokes that cross a strip, what lies in [from, to).
  void add_part(InkColumn& column, std::size_t strip, double from, double to) const {
    for (std::size_t k = strips_[strip].first; k < strips_[strip].last; ++k) {
      const InkStroke& stroke = strokes_[k];
      const FlatPoint a = stroke.a, b = stroke.b;
      if (!(a.x < to && b.x >= from)) continue;
      const double slope = a.x < b.x ? (b.y - a.y) / (b.x - a.x) : 0.0;
      const auto y = [&](double x) { return a.y + slope * (x - a.x); };
      column.add(depths_.span(a.x < from ? y(from) : a.y, b.x > to ? y(to) : b.y));
    }
  }

  InkDepths depths_;
  double left_;
  std::size_t block_;  ///< strips in a block
  std::vector<Strip> strips_;
  std::vector<InkStroke> strokes_;  ///< rightwards
};

/// Where there is ink, column by column of a grid.
class ColumnInk {
 public:
  ColumnInk(const Ink& ink, double step_x, const InkDepths& depths)
      : depths_(depths), strips_(ink, step_x, depths) {}

  /// Works out the columns of a grid: its start, step and number of columns count.
  void set_columns(const TileGrid& grid) {
    constexpr double kFar = 1e9;  // mm: what lies off the grid is the nearest column's
    columns_.resize(grid.columns, InkColumn(depths_));
    for (std::size_t c = 0; c < grid.columns; ++c) {
      columns_[c].clear();
      const double left = grid.start.x + static_cast<double>(c) * grid.step_x;
      strips_.add_to(columns_[c], c == 0 ? -kFar : left,
                     c + 1 == grid.columns ? kFar : left + grid.step_x);
    }
  }
  const std::vector<InkColumn>& columns() const { return columns_; }

  /// Whether a box lies beyond all ink of its column: there may be no tile for it.
  bool is_off(const TileGrid& grid, const plane::Box& box) const {
    const InkSpan own = depths_.span(box.lo.y, box.hi.y);
    return std::ranges::none_of(columns_[grid.column_of(box.lo.x)].spans(), [&](const InkSpan s) {
      return s.from <= own.to && own.from <= s.to;
    });
  }
  /// Whether no tile holds a box's upper edge, given the ink of all columns.
  bool has_no_tile(const std::vector<InkColumn>& columns, const TileGrid& grid,
                   const plane::Box& box) const {
    const std::size_t row = grid.row_of(box.hi.y);
    return std::ranges::none_of(columns[grid.column_of(box.lo.x)].spans(), [&](const InkSpan s) {
      return grid.row_of(depths_.top - s.from) <= row && row <= grid.row_of(depths_.top - s.to);
    });
  }

  /// Marks every cell that has ink.
  void mark(TileGrid& grid) const {
    grid.used.assign(grid.columns * grid.rows, 0);
    for (std::size_t c = 0; c < grid.columns; ++c)
      for (const InkSpan s : columns_[c].spans())
        for (std::size_t r = grid.row_of(depths_.top - s.from);
             r <= grid.row_of(depths_.top - s.to); ++r)
          grid.used[r * grid.columns + c] = 1;
  }

 private:
  InkDepths depths_;
  InkStrips strips_;
  std::vector<InkColumn> columns_;
};

/// How many cells the columns' ink needs, for all shifts of the first row at once.
///
/// As the shift grows, a span takes one row more once an edge between rows has passed its lower
/// end, and one row less once an edge has passed its upper end. These changes are few, and for all
/// shifts between two of them the number is the same.
class RowCount {
 public:
  RowCount(const std::vector<double>& shifts, double step) : shifts_(shifts), step_(step) {}

  /// Shifts next to each other, by their numbers: `from` and on, up to but not including `to`.
  struct Run {
    std::size_t from, to;
  };
  struct Fewest {
    int cells = std::numeric_limits<int>::max();
    std::vector<Run> shifts;  ///< that need no more, rising
  };
  Fewest of(const std::vector<InkColumn>& columns) {
    changes_.clear();
    first_ = 0;
    for (const InkColumn& column : columns)
      for (const InkSpan s : column.spans()) {
        add(s.to, 1);
        add(s.from, -1);
        ++first_;
      }
    std::ranges::sort(changes_, {}, &Change::shift);
    Fewest fewest;
    int cells = first_;
    std::size_t from = 0;
    const auto all_until = [&](std::size_t to) {
      if (to == from || cells > fewest.cells) return;
      if (cells < fewest.cells) fewest.shifts.clear();
      fewest.cells = cells;
      fewest.shifts.push_back({from, to});
    };
    for (const Change& change : changes_) {
      all_until(change.shift);
      cells += change.by;
      from = change.shift;
    }
    all_until(shifts_.size());
    return fewest;
  }

 private:
  struct Change {
    std::size_t shift;
    int by;
  };

  /// The row of that depth, for each shift.
  void add(double depth, int sign) {
    const double row = std::floor(depth / step_);
    first_ += sign * static_cast<int>(row);
    const auto next = std::ranges::lower_bound(shifts_, step_ * (row + 1) - depth);
    changes_.push_back({static_cast<std::size_t>(next - shifts_.begin()), sign});
  }

  const std::vector<double>& shifts_;
  double step_;
  int first_ = 0;  ///< cells before any change
  std::vector<Change> changes_;
};

}  // namespace swathe
