#include "numeral/bridge_candidates.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <numbers>
#include <span>
#include <utility>

namespace swathe {
namespace {

constexpr int kDirections = 12;  // every 15 degrees of a half turn
constexpr int kPlaces = 32;      // across an island; even, so that its middle is one of them
constexpr std::size_t kMostInStrip = 16;  // a strip crosses an island with teeth many times
constexpr double kSeat = 0.2;             // mm the bar runs into the sheet at either end
constexpr double kLevelCost = 1.25, kSlantCost = 1.5;
constexpr double kOffMiddleCost = 0.05;

/// Where a contour crosses the middle line of a strip.
struct Crossing {
  double y = 0;
  int contour = 0;
};

/// A band of levels.
struct Levels {
  double lo = 0, hi = 0;
};

/// A region turned so that bars run up the page.
class Turned {
 public:
  Turned(const plane::Region& outline, FlatPoint along)
      : along_(along), right_(-1.0 * left_of(along)) {
    for (const plane::Polygon& contour : outline) {
      plane::Polygon& turned = contours_.emplace_back();
      for (FlatPoint p : contour) turned.push_back({dot(p, right_), dot(p, along_)});
    }
    for (std::size_t c = 0; c < contours_.size(); ++c) {
      FlatPoint from = contours_[c].back();
      for (FlatPoint to : contours_[c]) {
        edges_.push_back(
            {from.x < to.x ? from : to, from.x < to.x ? to : from, static_cast<int>(c), 0});
        from = to;
      }
    }
    std::ranges::stable_sort(edges_, {}, [](const Edge& edge) { return edge.left.x; });
    index();
  }

  const plane::Polygon& contour(int i) const { return contours_[static_cast<std::size_t>(i)]; }
  FlatPoint back(FlatPoint p) const { return p.x * right_ + p.y * along_; }

  /// Upwards.
  std::vector<Crossing> crossings(double x) const {
    std::vector<Crossing> found;
    for (const std::size_t i : in_column(column_of(x))) {
      const Edge& edge = edges_[i];
      if (edge.left.x <= x && edge.right.x > x) found.push_back({edge.level(x), edge.contour});
    }
    std::ranges::stable_sort(found, {}, &Crossing::y);
    return found;
  }

  /// Levels at which any edge lies in the strip, joined where they overlap; upwards.
  std::vector<Levels> edges_in_strip(double x0, double x1) const {
    std::vector<Levels> found;
    const std::size_t first = column_of(x0), last = column_of(x1);
    for (std::size_t column = first; column <= last; ++column) {
      for (const std::size_t i : in_column(column)) {
        const Edge& edge = edges_[i];
        if (edge.left.x > x1 || edge.right.x < x0) continue;
        if (column > first && edge.column < column) continue;  // already seen in an earlier column
        const double ya = edge.left.x < x0 ? edge.level(x0) : edge.left.y;
        const double yb = edge.right.x > x1 ? edge.level(x1) : edge.right.y;
        found.push_back({std::min(ya, yb), std::max(ya, yb)});
      }
    }
    if (found.empty()) return found;
    std::ranges::sort(found, {}, &Levels::lo);  // of those that start level all are joined
    auto joined = found.begin();
    for (auto next = joined + 1; next != found.end(); ++next) {
      if (next->lo <= joined->hi) {
        joined->hi = std::max(joined->hi, next->hi);
      } else {
        *++joined = *next;
      }
    }
    found.erase(joined + 1, found.end());
    return found;
  }

 private:
  struct Edge {
    FlatPoint left, right;
    int contour;
    std::size_t column;  ///< of its left end

    double level(double x) const {
      return left.y + (right.y - left.y) * (x - left.x) / (right.x - left.x);
    }
  };

  std::size_t column_of(double x) const {
    const double share = box_.width() > 0 ? (x - box_.lo.x) / box_.width() : 0;
    const double count = static_cast<double>(columns());
    return static_cast<std::size_t>(std::clamp(std::floor(share * count), 0.0, count - 1));
  }

  std::size_t columns() const { return starts_.size() - 1; }
  std::span<const std::size_t> in_column(std::size_t column) const {
    return std::span(members_).subspan(starts_[column], starts_[column + 1] - starts_[column]);
  }

  /// Sorts the edges into columns, so that a strip looks only at those near it.
  void index() {
    for (const plane::Polygon& contour : contours_) box_.cover(bounds(contour));
    starts_.assign(std::clamp<std::size_t>(edges_.size() / 8, 1, 256) + 1, 0);
    std::vector<std::size_t> last;
    last.reserve(edges_.size());
    for (Edge& edge : edges_) {
      edge.column = column_of(edge.left.x);
      last.push_back(column_of(edge.right.x));
      for (std::size_t k = edge.column; k <= last.back(); ++k) ++starts_[k + 1];
    }
    for (std::size_t k = 0; k < columns(); ++k) starts_[k + 1] += starts_[k];
    members_.resize(starts_.back());
    std::vector<std::size_t> next = starts_;
    for (std::size_t i = 0; i < edges_.size(); ++i)
      for (std::size_t k = edges_[i].column; k <= last[i]; ++k) members_[next[k]++] = i;
  }

  std::vector<plane::Polygon> contours_;
  std::vector<Edge> edges_;  ///< by their left ends
  plane::Box box_;
  /// The edges that reach into each of some columns of equal width, column by column, and where
  /// each column's start.
  std::vector<std::size_t> members_, starts_;
  FlatPoint along_, right_;
};

/// Levels at which a strip holds nothing but sheet, upwards; the first and last have no end.
std::vector<Levels> sheet_levels(const Turned& turned, const std::vector<Crossing>& crossings,
                                 double x0, double x1) {
  constexpr double kFar = std::numeric_limits<double>::infinity();
  std::vector<Levels> found;
  double from = -kFar;
  std::size_t below = 0;  // of the crossings
  const auto add = [&](double to) {
    const double inside = from == -kFar ? to - 1 : (to == kFar ? from + 1 : 0.5 * (from + to));
    while (below < crossings.size() && crossings[below].y < inside) ++below;
    if (below % 2 == 0 && to - from >= 2 * kSeat) found.push_back({from, to});
  };
  for (const Levels& edges : turned.edges_in_strip(x0, x1)) {
    add(edges.lo);
    from = edges.hi;
  }
  add(kFar);
  return found;
}

struct Direction {
  FlatPoint along;
  double cost = 1;
};

Direction direction_number(int i) {
  if (i == 0) return {{0, 1}, 1.0};
  if (2 * i == kDirections) return {{1, 0}, kLevelCost};
  return {plane::direction(std::numbers::pi * (0.5 + static_cast<double>(i) / kDirections)),
          kSlantCost};
}

/// The bars of one strip that end on `island`.
void add_bars_of_strip(const Turned& turned, const SheetPieces& pieces, int island, double x,
                       double width, double cost_factor, std::vector<BridgeCandidate>& all) {
  std::vector<BridgeCandidate> found;
  const std::vector<Crossing> crossings = turned.crossings(x);
  const std::vector<Levels> sheet = sheet_levels(turned, crossings, x - width / 2, x + width / 2);
  for (std::size_t i = 0; i + 1 < sheet.size(); ++i) {
    const double lo = sheet[i].hi, hi = sheet[i + 1].lo;
    const auto between = std::ranges::lower_bound(crossings, lo, {}, &Crossing::y);
    if (std::ranges::upper_bound(crossings, hi, {}, &Crossing::y) - between != 2) continue;
    const int a = pieces.of_contour[static_cast<std::size_t>(between[0].contour)];
    const int b = pieces.of_contour[static_cast<std::size_t>(between[1].contour)];
    if (a == b || (a != island && b != island)) continue;
    BridgeCandidate candidate;
    candidate.a = a;
    candidate.b = b;
    candidate.cost = cost_factor * (hi - lo);
    candidate.bridge.from = turned.back({x, between[0].y});
    candidate.bridge.to = turned.back({x, between[1].y});
    candidate.bridge.width = width;
    candidate.bridge.length = between[1].y - between[0].y;
    for (FlatPoint corner : {FlatPoint{x - width / 2, lo - kSeat},
                             {x + width / 2, lo - kSeat},
                             {x + width / 2, hi + kSeat},
                             {x - width / 2, hi + kSeat}}) {
      candidate.bridge.bar.push_back(turned.back(corner));
    }
    found.push_back(std::move(candidate));
  }
  if (found.size() > kMostInStrip) {
    std::ranges::stable_sort(found, {}, &BridgeCandidate::cost);
    found.resize(kMostInStrip);
  }
  std::ranges::move(found, std::back_inserter(all));
}

bool parted_by_edges_of(const plane::Polygon& a, const plane::Polygon& b, double gap) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    const FlatPoint at = a[i];
    const FlatPoint outward = -1.0 * left_of(unit(a[(i + 1) % a.size()] - at));
    double nearest = std::numeric_limits<double>::infinity();
    for (FlatPoint p : b) nearest = std::min(nearest, dot(p - at, outward));
    if (nearest >= gap) return true;
  }
  return false;
}

}  // namespace

SheetPieces sheet_pieces(const plane::Region& outline) {
  SheetPieces pieces;
  pieces.of_contour.assign(outline.size(), 0);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    if (area(outline[i]) >= 0) continue;
    pieces.island.push_back(static_cast<int>(i));
    pieces.of_contour[i] = pieces.islands();
  }
  // An outline within an island (the dot of a dotted nought) is surrounded by that island.
  for (std::size_t i = 0; i < outline.size(); ++i) {
    if (area(outline[i]) < 0) continue;
    double least = std::numeric_limits<double>::infinity();
    for (int hole : pieces.island) {
      const plane::Polygon& around = outline[static_cast<std::size_t>(hole)];
      if (-area(around) >= least || !contains(around, outline[i].front())) continue;
      if (std::abs(area(around)) <= std::abs(area(outline[i]))) continue;
      least = -area(around);
      pieces.of_contour[i] = pieces.of_contour[static_cast<std::size_t>(hole)];
    }
  }
  return pieces;
}

std::vector<BridgeCandidate> bridge_candidates(const plane::Region& outline,
                                               const SheetPieces& pieces, double width) {
  std::vector<BridgeCandidate> found;
  for (int d = 0; d < kDirections; ++d) {
    const Direction way = direction_number(d);
    const Turned turned(outline, way.along);
    for (int island = 1; island <= pieces.islands(); ++island) {
      double lo = std::numeric_limits<double>::infinity(), hi = -lo;
      for (FlatPoint p : turned.contour(pieces.island[static_cast<std::size_t>(island - 1)])) {
        lo = std::min(lo, p.x);
        hi = std::max(hi, p.x);
      }
      for (int place = 0; place <= kPlaces; ++place) {
        const double share = static_cast<double>(place) / kPlaces;
        const double cost = way.cost * (1 + kOffMiddleCost * std::abs(2 * share - 1));
        add_bars_of_strip(turned, pieces, island, lo + share * (hi - lo), width, cost, found);
      }
    }
  }
  std::vector<std::pair<double, std::size_t>> order;  // as good as the same: the first found first
  order.reserve(found.size());
  for (std::size_t k = 0; k < found.size(); ++k)
    order.emplace_back(std::round(found[k].cost * 1e6), k);
  std::ranges::sort(order);
  std::vector<BridgeCandidate> sorted;
  sorted.reserve(found.size());
  for (const auto& [cost, k] : order) sorted.push_back(std::move(found[k]));
  return sorted;
}

bool stand_apart(const Bridge& a, const Bridge& b, double gap) {
  return parted_by_edges_of(a.bar, b.bar, gap) || parted_by_edges_of(b.bar, a.bar, gap);
}

}  // namespace swathe
