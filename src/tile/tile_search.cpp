#include "tile/tile_search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

#include "tile/column_ink.hpp"
#include "tile/edge_cuts.hpp"

namespace swathe {
namespace {

constexpr double kSearchStep = 1.0;  ///< between places tried for the first tile
/// At most so many are tried each way: enough for every named paper; longer paper has wider steps.
constexpr int kMostShifts = 1300;
constexpr double kClusterSize = 24.0;
constexpr double kClear = 2.0;  ///< a tile's edge keeps this far from outer lines and from corners
constexpr double kSamePlace = 1e-6;
constexpr std::size_t kClustersAtOnce = 4;  ///< put into a tile before it is looked at
constexpr double kStrip = 5.0;              ///< in which a tile's ink is looked at
// Where the best place has tiles that are nearly empty:
constexpr double kApart = 8.0;           ///< from one place looked at to the next
constexpr std::size_t kMostLooks = 200;  ///< at places
constexpr int kMostMoreCut = 12;         ///< boxes: fewer than a cut edge counts for

std::size_t tiles_along(double length, double step, double overlap) {
  return static_cast<std::size_t>(std::max(1.0, std::ceil((length - overlap) / step - 1e-9)));
}

/// How far the first tile may start before what is drawn, rising. `corners` are measured from
/// there.
std::vector<double> shifts_for(double step, const std::vector<double>& corners) {
  std::vector<double> shifts;
  const double apart = std::max(kSearchStep, step / kMostShifts);
  for (int k = 0; k * apart < step; ++k) shifts.push_back(k * apart);
  for (const double corner : corners)
    for (const double edge : {corner - kClear, corner + kClear})
      shifts.push_back(step - (edge - step * std::floor(edge / step)));
  std::erase_if(shifts, [&](double shift) { return shift >= step - kSamePlace; });
  std::ranges::sort(shifts);
  const auto same = [](double a, double b) { return b - a < kSamePlace; };
  shifts.erase(std::unique(shifts.begin(), shifts.end(), same), shifts.end());
  return shifts;
}

/// A place of the first tile.
struct Place {
  /// How far it has been looked into.
  enum class Known {
    Shift,  ///< the best of its shift across, of which no other place is listed yet
    Cut,    ///< boxes cut by edges are counted, but not yet those without a tile
    All
  };
  int cut;           ///< boxes; at least so many until all is known
  double off;        ///< how far off the middle it is, both ways together
  std::size_t x, y;  ///< numbers of the shifts
  Known known;

  friend bool operator<(const Place& a, const Place& b) {
    return std::tie(a.cut, a.off, a.x, a.y) < std::tie(b.cut, b.off, b.x, b.y);
  }
};

/// All places of the first tile of one page.
class Search {
 public:
  Search(const Ink& ink, const TileWishes& wishes, double step_x, double step_y, double overlap,
         std::size_t most)
      : ink_(ink),
        wishes_(wishes),
        all_(box_of(ink)),
        grid_{{}, step_x, step_y, overlap, 1, 1, {}},
        columns_(ink, step_x,
                 {all_.hi.y, std::max(0.0, all_.height() - overlap - kSamePlace), step_y}),
        most_(most) {
    std::vector<double> x, y;
    for (const FlatPoint corner : wishes.corners) {
      x.push_back(corner.x - all_.lo.x);
      y.push_back(all_.hi.y - corner.y);
    }
    across_ = shifts_for(step_x, x);
    down_ = shifts_for(step_y, y);
  }

  TileGrid best() {
    TileGrid best;
    std::tuple<std::size_t, std::size_t, std::size_t> least;
    std::optional<int> cut;  ///< by the first without slivers
    std::set<std::pair<int, int>> looked_at;
    // A large sheet has a million equal places, of which the first will mostly do. So a place is
    // looked into only when nothing listed may be better.
    std::vector<Place> places = one_is_enough() ? std::vector{middle()} : best_of_shifts();
    const auto later = [](const Place& a, const Place& b) { return b < a; };
    std::ranges::make_heap(places, later);
    while (!places.empty()) {
      std::ranges::pop_heap(places, later);
      Place place = places.back();
      places.pop_back();
      const bool is_shift = place.known == Place::Known::Shift;
      if (cut) {  // it has tiles that are nearly empty: others may not
        if (place.cut > *cut + kMostMoreCut || looked_at.size() > kMostLooks) break;
        if (!is_shift && looked_at.contains(near(place))) continue;
      }
      const auto list = [&](const Place& one) {
        places.push_back(one);
        std::ranges::push_heap(places, later);
      };
      if (is_shift) {
        CutBoxes by_columns(cuts_across_, wishes_.whole);
        by_columns.go_to(place.x);
        for_places(*std::ranges::lower_bound(fewest_, place.x, {}, &Across::x), by_columns, list);
        continue;
      }
      if (place.known == Place::Known::Cut) {
        place.cut += without_tile(place);
        place.known = Place::Known::All;
        list(place);
        continue;
      }
      TileGrid grid = grid_at(place.x, place.y);
      columns_.set_columns(grid);
      columns_.mark(grid);
      const std::size_t thin = slivers(grid, ink_);
      const std::size_t tiles = grid.count();
      // Beside one that is otherwise alike it is the same whether it has as many or more.
      const bool alike =
          !best.used.empty() && std::get<0>(least) == tiles && std::get<1>(least) == 0;
      const std::size_t most = alike ? std::get<2>(least) : tiles;
      const std::tuple own{tiles, thin, thin == 0 ? nearly_empty(grid, ink_, most) : 0};
      if (best.used.empty() || own < least) {
        best = std::move(grid);
        least = own;
      }
      if (thin > 0) continue;
      if (std::get<1>(least) == 0 && std::get<2>(least) == 0) break;
      if (!cut) cut = place.cut;
      looked_at.insert(near(place));
    }
    return best;
  }

 private:
  static plane::Box box_of(const Ink& ink) {
    plane::Box all = ink.bounds();
    if (all.empty()) all.cover(FlatPoint{0, 0});
    return all.grown(kClear);
  }

  TileGrid grid_at(std::size_t x, std::size_t y) const {
    TileGrid grid = grid_;
    grid.start = {all_.lo.x - across_[x], all_.hi.y + down_[y]};
    grid.columns = tiles_along(all_.hi.x - grid.start.x, grid.step_x, grid.overlap);
    grid.rows = tiles_along(grid.start.y - all_.lo.y, grid.step_y, grid.overlap);
    return grid;
  }

  /// Places so near one another are one.
  std::pair<int, int> near(const Place& place) const {
    return {static_cast<int>(across_[place.x] / kApart), static_cast<int>(down_[place.y] / kApart)};
  }

  bool one_is_enough() const {
    return all_.width() <= grid_.step_x + grid_.overlap &&
           all_.height() <= grid_.step_y + grid_.overlap;
  }

  /// The place where one tile holds everything with as much room on all sides.
  Place middle() const {
    const auto nearest = [](const std::vector<double>& shifts, double slack) {
      const auto off = [&](double shift) { return std::abs(shift - 0.5 * slack); };
      return static_cast<std::size_t>(std::ranges::min_element(shifts, {}, off) - shifts.begin());
    };
    return {0, 0, nearest(across_, grid_.step_x + grid_.overlap - all_.width()),
            nearest(down_, grid_.step_y + grid_.overlap - all_.height()), Place::Known::All};
  }

  /// A shift across, and the shifts down with which it takes the fewest tiles.
  struct Across {
    std::size_t x;
    std::vector<RowCount::Run> down;
  };
  std::vector<Across> fewest_across() {
    RowCount rows(down_, grid_.step_y);
    std::vector<Across> all;
    int least = static_cast<int>(
        std::min<std::size_t>(most_, static_cast<std::size_t>(std::numeric_limits<int>::max())));
    std::vector<InkColumn> counted;  // shifts next to each other often divide the ink alike
    RowCount::Fewest own;
    for (std::size_t x = 0; x < across_.size(); ++x) {
      columns_.set_columns(across_grids_[x]);
      if (columns_.columns() != counted) {
        counted = columns_.columns();
        own = rows.of(counted);
      }
      if (own.cells > least) continue;
      if (own.cells < least) all.clear();
      least = own.cells;
      all.push_back({x, own.shifts});
    }
    return all;
  }

  /// The best place of each shift across with which there are fewest tiles. Boxes that are cut are
  /// counted, but not yet those without a tile: that takes longer, and few places are asked.
  std::vector<Place> best_of_shifts() {
    for (std::size_t x = 0; x < across_.size(); ++x) across_grids_.push_back(grid_at(x, 0));
    fewest_ = fewest_across();
    if (fewest_.empty()) return {};
    for (std::size_t y = 0; y < down_.size(); ++y) down_grids_.push_back(grid_at(0, y));
    cuts_across_ = EdgeCuts(
        wishes_.whole, across_.size(),
        [](const plane::Box& box) { return std::pair(box.lo.x, box.hi.x); },
        [&](double end, std::size_t x) { return across_grids_[x].column_of(end); });
    cuts_down_ = EdgeCuts(
        wishes_.whole, down_.size(),
        [](const plane::Box& box) { return std::pair(box.lo.y, box.hi.y); },
        [&](double end, std::size_t y) { return down_grids_[y].row_of(end); });
    for (std::size_t y = 0; y < down_.size(); ++y)
      off_down_.push_back(off_middle(down_[y], down_grids_[y].rows, grid_.step_y, all_.height()));
    std::vector<Place> places;
    CutBoxes by_columns(cuts_across_, wishes_.whole);
    for (const Across& across : fewest_) {
      by_columns.go_to(across.x);
      std::optional<Place> best;
      for_places(across, by_columns, [&](const Place& place) {
        if (!best || place < *best) best = place;
      });
      best->known = Place::Known::Shift;
      places.push_back(*best);
    }
    return places;
  }

  /// Calls `each` for every place of one shift across, given the boxes that the edges of its
  /// columns cut.
  template <class Each>
  void for_places(const Across& across, const CutBoxes& by_columns, Each each) const {
    const double off_across =
        off_middle(across_[across.x], across_grids_[across.x].columns, grid_.step_x, all_.width());
    const auto known = wishes_.whole.empty() ? Place::Known::All : Place::Known::Cut;
    int cut = by_columns.weight();
    auto change = cuts_down_.changes().begin();
    for (const RowCount::Run& run : across.down)
      for (std::size_t y = run.from; y < run.to; ++y) {
        for (; change != cuts_down_.changes().end() && change->shift <= y; ++change)
          if (!by_columns.holds(change->box)) {
            const int weight = wishes_.whole[change->box].weight;
            cut += change->cut ? weight : -weight;
          }
        each(Place{cut, off_across + off_down_[y], across.x, y, known});
      }
  }

  /// How many of the boxes lie where there is no tile.
  int without_tile(const Place& place) {
    if (off_.size() < across_.size()) off_.resize(across_.size());
    const TileGrid grid = grid_at(place.x, place.y);
    std::optional<OffTiles>& own = off_[place.x];
    if (!own) {
      columns_.set_columns(grid);
      own.emplace();
      for (const WholeBox& whole : wishes_.whole)
        if (columns_.is_off(grid, whole.box)) own->boxes.push_back(whole);
      if (!own->boxes.empty()) own->columns = columns_.columns();
    }
    int count = 0;
    for (const auto& [box, weight] : own->boxes)
      if (columns_.has_no_tile(own->columns, grid, box)) count += weight;
    return count;
  }

  /// How far a shift is from the one that leaves equal room at both ends.
  double off_middle(double shift, std::size_t tiles, double step, double length) const {
    const double slack = static_cast<double>(tiles) * step + grid_.overlap - length;
    return std::abs(shift - 0.5 * slack);
  }

  const Ink& ink_;
  const TileWishes& wishes_;
  plane::Box all_;
  TileGrid grid_;
  ColumnInk columns_;
  std::size_t most_;
  std::vector<double> across_, down_;
  std::vector<TileGrid> across_grids_, down_grids_;  ///< by shift one way, not shifted the other
  std::vector<Across> fewest_;                       ///< by rising shift
  EdgeCuts cuts_across_, cuts_down_;
  std::vector<double> off_down_;  ///< off the middle, by shift
  /// For one shift across: the boxes that lie beyond their columns' ink and, where there are any,
  /// the columns.
  struct OffTiles {
    std::vector<WholeBox> boxes;
    std::vector<InkColumn> columns;
  };
  std::vector<std::optional<OffTiles>> off_;  ///< by shift, where asked for
};

/// The shares of a stroke between which it lies in a box; from more to less where it does not.
std::pair<double, double> share_inside(const InkStroke& stroke, const plane::Box& box) {
  double from = 0, to = 1;
  const auto slab = [&](double at, double step, double lo, double hi) {
    if (step == 0.0) {
      if (at < lo || at > hi) to = -1;
      return;
    }
    const double one = (lo - at) / step, other = (hi - at) / step;
    from = std::max(from, std::min(one, other));
    to = std::min(to, std::max(one, other));
  };
  slab(stroke.a.x, stroke.b.x - stroke.a.x, box.lo.x, box.hi.x);
  slab(stroke.a.y, stroke.b.y - stroke.a.y, box.lo.y, box.hi.y);
  return {from, to};
}

/// How much of a stroke lies in a box.
double length_inside(const InkStroke& stroke, const plane::Box& box) {
  const auto [from, to] = share_inside(stroke, box);
  return std::max(0.0, to - from) * apart(stroke.a, stroke.b);
}

/// What lies in a cell: from the first ink to the last of each strip of it.
class CellStrips {
 public:
  explicit CellStrips(const plane::Box& cell)
      : cell_(cell), rows_(count(cell.height())), columns_(count(cell.width())) {}

  void add(const InkStroke& stroke) {
    const auto at = [&](double share) { return stroke.a + share * (stroke.b - stroke.a); };
    const auto [from, to] = share_inside(stroke, cell_);
    if (from > to) return;
    add(rows_, at(from).y - cell_.lo.y, at(to).y - cell_.lo.y, at(from).x, at(to).x);
    add(columns_, at(from).x - cell_.lo.x, at(to).x - cell_.lo.x, at(from).y, at(to).y);
  }

  /// The share of the cell between first and last, in strips of the way that has more.
  double filled() const {
    return std::max(length(rows_) * kStrip, length(columns_) * kStrip) /
           (cell_.width() * cell_.height());
  }

 private:
  struct Strip {
    double first = std::numeric_limits<double>::max(), last = -first;
  };
  static std::size_t count(double size) {
    return static_cast<std::size_t>(std::max(1.0, std::ceil(size / kStrip)));
  }
  /// A stroke that goes over strips from `a` to `b`, and along them from `u` to `v`.
  static void add(std::vector<Strip>& strips, double a, double b, double u, double v) {
    if (a > b) {
      std::swap(a, b);
      std::swap(u, v);
    }
    const auto number = [&](double d) {
      return std::min(strips.size() - 1, static_cast<std::size_t>(std::max(0.0, d / kStrip)));
    };
    const auto along = [&](double d) {
      return b - a < kSamePlace ? v : u + (v - u) * std::clamp((d - a) / (b - a), 0.0, 1.0);
    };
    for (std::size_t k = number(a); k <= number(b); ++k) {
      const double lo = b - a < kSamePlace ? u : along(kStrip * static_cast<double>(k));
      const double hi = along(kStrip * static_cast<double>(k + 1));
      strips[k].first = std::min({strips[k].first, lo, hi});
      strips[k].last = std::max({strips[k].last, lo, hi});
    }
  }
  static double length(const std::vector<Strip>& strips) {
    double sum = 0;
    for (const Strip& strip : strips) sum += std::max(0.0, strip.last - strip.first);
    return sum;
  }

  plane::Box cell_;
  std::vector<Strip> rows_, columns_;
};

/// Calls see(number, cell, cluster) for each tile's cell that a cluster may have ink in.
template <class See>
void for_each_cell(const TileGrid& grid, const Ink& ink, See see) {
  for (const Ink::Cluster& cluster : ink.clusters) {
    const std::size_t left = grid.column_of(cluster.box.lo.x),
                      right = grid.column_of(cluster.box.hi.x), top = grid.row_of(cluster.box.hi.y),
                      bottom = grid.row_of(cluster.box.lo.y);
    for (std::size_t row = top; row <= bottom; ++row)
      for (std::size_t column = left; column <= right; ++column)
        see(row * grid.columns + column, grid.cell(column, row), cluster);
  }
}

}  // namespace

void Ink::add(InkStroke stroke) {
  plane::Box box;
  box.cover(stroke.a);
  box.cover(stroke.b);
  strokes.push_back(stroke);
  if (!clusters.empty()) {
    plane::Box both = clusters.back().box;
    both.cover(box);
    if (both.width() <= kClusterSize && both.height() <= kClusterSize) {
      clusters.back().last = strokes.size();
      clusters.back().box = both;
      return;
    }
  }
  clusters.push_back({strokes.size() - 1, strokes.size(), box});
}

plane::Box Ink::bounds() const {
  plane::Box all;
  for (const Cluster& cluster : clusters) all.cover(cluster.box);
  return all;
}

std::size_t slivers(const TileGrid& grid, const Ink& ink) {
  std::vector<double> held(grid.used.size(), 0.0);
  for_each_cell(grid, ink,
                [&](std::size_t number, const plane::Box& cell, const Ink::Cluster& cluster) {
                  double& own = held[number];
                  for (std::size_t k = cluster.first; k < cluster.last && own < kSliver; ++k)
                    own += length_inside(ink.strokes[k], cell);
                });
  std::size_t count = 0;
  for (std::size_t k = 0; k < held.size(); ++k) count += grid.used[k] && held[k] < kSliver;
  return count;
}

std::size_t nearly_empty(const TileGrid& grid, const Ink& ink, std::size_t most) {
  struct Cell {
    plane::Box box;
    std::vector<const Ink::Cluster*> clusters;
  };
  std::vector<Cell> cells(grid.used.size());
  for_each_cell(grid, ink,
                [&](std::size_t number, const plane::Box& box, const Ink::Cluster& cluster) {
                  if (!grid.used[number]) return;
                  cells[number].box = box;
                  cells[number].clusters.push_back(&cluster);
                });
  std::erase_if(cells, [](const Cell& cell) { return cell.clusters.empty(); });
  // Those with the fewest clusters first: they are the ones that may be nearly empty.
  std::ranges::stable_sort(cells, {}, [](const Cell& cell) { return cell.clusters.size(); });
  std::size_t count = 0;
  for (const Cell& cell : cells) {
    if (count >= most) break;
    CellStrips held(cell.box);
    bool enough = false;
    for (std::size_t c = 0; c < cell.clusters.size() && !enough; ++c) {
      const Ink::Cluster& cluster = *cell.clusters[c];
      for (std::size_t k = cluster.first; k < cluster.last; ++k) held.add(ink.strokes[k]);
      if (c % kClustersAtOnce == 0 || c + 1 == cell.clusters.size())
        enough = held.filled() >= kNearlyEmpty;
    }
    count += !enough;
  }
  return count;
}

TileGrid fewest_tiles(const Ink& ink, const TileWishes& wishes, double image_width,
                      double image_height, double overlap, std::size_t most) {
  return Search(ink, wishes, image_width - overlap, image_height - overlap, overlap, most).best();
}

}  // namespace swathe
