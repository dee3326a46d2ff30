#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "plane/clip.hpp"
#include "plane/medial.hpp"
#include "swathe/type.hpp"

namespace swathe {
namespace {

constexpr double kSameWidth = 1e-6;  // mm

/// A piece of the medial axis between two neighboring points, and the numbers of these points.
struct Bit {
  std::size_t from, to;
  double opposed;
  StrokePiece piece;
};

struct Bits {
  std::vector<Bit> bits;
  std::size_t points = 0;
};

/// Those that count as stroke.
Bits bits_of(const plane::MedialAxis& axis) {
  Bits all;
  all.points = axis.junctions;
  for (const plane::MedialEdge& edge : axis.edges) {
    std::size_t from = edge.from;
    for (std::size_t i = 1; i < edge.points.size(); ++i) {
      const plane::MedialPoint &a = edge.points[i - 1], &b = edge.points[i];
      const std::size_t to = i + 1 == edge.points.size() ? edge.to : all.points++;
      const double opposed = (a.opposed() + b.opposed()) / 2;
      if (opposed > kStrokeOpposed) {
        all.bits.push_back(
            {from, to, opposed, {0.5 * (a.at + b.at), apart(a.at, b.at), a.radius + b.radius}});
      }
      from = to;
    }
  }
  return all;
}

/// Removes pieces from the free ends as long as they taper.
void trim_ends(Bits& all, double least_opposed) {
  std::vector<std::vector<std::size_t>> at(all.points);
  for (std::size_t i = 0; i < all.bits.size(); ++i) {
    at[all.bits[i].from].push_back(i);
    at[all.bits[i].to].push_back(i);
  }
  std::vector<bool> gone(all.bits.size());
  std::vector<std::size_t> ends;
  for (std::size_t p = 0; p < all.points; ++p) {
    if (at[p].size() == 1) ends.push_back(p);
  }
  while (!ends.empty()) {
    const std::size_t end = ends.back();
    ends.pop_back();
    if (at[end].size() != 1) continue;
    const std::size_t i = at[end].front();
    if (all.bits[i].opposed > least_opposed) continue;
    gone[i] = true;
    const std::size_t other = all.bits[i].from == end ? all.bits[i].to : all.bits[i].from;
    at[end].clear();
    std::erase(at[other], i);
    ends.push_back(other);
  }
  std::vector<Bit> left;
  for (std::size_t i = 0; i < all.bits.size(); ++i) {
    if (!gone[i]) left.push_back(all.bits[i]);
  }
  all.bits = std::move(left);
}

/// Leaves out connected lines that are shorter than `least` from end to end.
void drop_short(Bits& all, double least) {
  std::vector<std::size_t> parent(all.points);
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  const auto root = [&](std::size_t p) {
    while (parent[p] != p) p = parent[p] = parent[parent[p]];
    return p;
  };
  for (const Bit& bit : all.bits) parent[root(bit.from)] = root(bit.to);
  std::vector<double> length(all.points);
  for (const Bit& bit : all.bits) length[root(bit.from)] += bit.piece.length;
  std::erase_if(all.bits, [&](const Bit& bit) { return length[root(bit.from)] < least; });
}

/// Narrow first. Along a bar all are as wide, but for rounding: those keep their order.
std::vector<StrokePiece> by_width(const std::vector<StrokePiece>& pieces) {
  std::vector<std::pair<double, std::size_t>> order;
  order.reserve(pieces.size());
  for (std::size_t k = 0; k < pieces.size(); ++k)
    order.emplace_back(std::round(pieces[k].width / kSameWidth), k);
  std::ranges::sort(order);
  std::vector<StrokePiece> sorted;
  sorted.reserve(pieces.size());
  for (const auto& [width, k] : order) sorted.push_back(pieces[k]);
  return sorted;
}

}  // namespace

type::Stroke::Stroke(std::vector<StrokePiece> pieces) : pieces_(by_width(pieces)) {
  for (const StrokePiece& piece : pieces_) length_ += piece.length;
}

double type::Stroke::median() const {
  double passed = 0;
  for (const StrokePiece& piece : pieces_) {
    passed += piece.length;
    if (2 * passed >= length_) return piece.width;
  }
  return 0;
}

double type::Stroke::least() const { return pieces_.empty() ? 0 : pieces_.front().width; }

FlatPoint type::Stroke::least_at() const {
  return pieces_.empty() ? FlatPoint{} : pieces_.front().at;
}

double type::Stroke::share_at_least(double width) const {
  if (!(length_ > 0)) return 0;
  double enough = 0;
  for (const StrokePiece& piece : pieces_) {
    if (piece.width >= width) enough += piece.length;
  }
  return enough / length_;
}

type::Stroke measure_stroke(const plane::Region& outline) {
  const plane::Box box = bounds(outline);
  if (box.empty()) return type::Stroke({});
  const double size = std::max(box.width(), box.height());
  Bits all = bits_of(medial_axis(unite(outline), size * kStrokeStep, kStrokeOpposed));
  trim_ends(all, kStrokeEndOpposed);
  drop_short(all, size * kStrokeLeastLine);
  std::vector<StrokePiece> pieces;
  pieces.reserve(all.bits.size());
  for (const Bit& bit : all.bits) pieces.push_back(bit.piece);
  return type::Stroke(std::move(pieces));
}

}  // namespace swathe
