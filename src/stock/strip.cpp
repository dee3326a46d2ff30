#include "stock/strip.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace swathe {
namespace {

constexpr double kTouch = 1e-6;  // mm: boxes may overlap by this much rounding

using Order = std::vector<std::size_t>;

struct Laid {
  FlatPoint lo, hi;
  bool meets(FlatPoint from, FlatPoint to) const {
    return from.x < hi.x - kTouch && lo.x < to.x - kTouch && from.y < hi.y - kTouch &&
           lo.y < to.y - kTouch;
  }
};

/// A strip in pieces of one length.
struct Strip {
  double width = 0, piece = 0;
  /// Where the piece that a box at `x` lies on ends.
  double next_cut(double x) const {
    return std::isfinite(piece) ? piece * (std::floor((x + kTouch) / piece) + 1.0) : piece;
  }
};

/// The place where the box ends earliest along the strip, then lowest across: one whose left edge
/// and lower edge each touch a box already laid, or the strip's.
FlatPoint place_for(const StripBox& box, const std::vector<Laid>& laid, const Strip& strip) {
  std::vector<double> xs = {0.0}, ys = {0.0};
  for (const Laid& other : laid) {
    xs.push_back(other.hi.x);
    ys.push_back(other.hi.y);
    if (std::isfinite(strip.piece)) xs.push_back(strip.next_cut(other.lo.x));
  }
  std::ranges::sort(xs);
  std::ranges::sort(ys);
  for (const double x : xs) {
    if (x + box.along > strip.next_cut(x) + kTouch) continue;
    for (const double y : ys) {
      if (y + box.across > strip.width + kTouch) break;
      const FlatPoint lo{x, y}, hi{x + box.along, y + box.across};
      if (std::ranges::none_of(laid, [&](const Laid& other) { return other.meets(lo, hi); })) {
        return lo;
      }
    }
  }
  assert(false && "past the last box there is always room");
  return {};
}

StripLay lay_in_order(const std::vector<StripBox>& boxes, const Strip& strip, const Order& order) {
  StripLay lay;
  lay.at.resize(boxes.size());
  std::vector<Laid> laid;
  for (const std::size_t i : order) {
    const FlatPoint at = place_for(boxes[i], laid, strip);
    const FlatPoint end = at + FlatPoint{boxes[i].along, boxes[i].across};
    laid.push_back({at, end});
    lay.at[i] = at;
    lay.length = std::max(lay.length, end.x);
  }
  return lay;
}

/// Long, wide and large boxes first, each once.
std::vector<Order> likely_orders(const std::vector<StripBox>& boxes, const Order& given) {
  std::vector<Order> orders = {given};
  const auto add = [&](auto measure) {
    Order order = given;
    std::ranges::stable_sort(order, std::ranges::greater(),
                             [&](std::size_t i) { return measure(boxes[i]); });
    orders.push_back(std::move(order));
  };
  add([](const StripBox& box) { return box.along; });
  add([](const StripBox& box) { return box.across; });
  add([](const StripBox& box) { return box.along * box.across; });
  add([](const StripBox& box) { return box.along + box.across; });
  return orders;
}

}  // namespace

StripLay lay_on_strip(const std::vector<StripBox>& boxes, double strip_width, double piece_length) {
  const Strip strip{strip_width, piece_length};
  Order order(boxes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  StripLay best;
  bool first = true;
  const auto attempt = [&](const Order& next) {
    StripLay lay = lay_in_order(boxes, strip, next);
    if (first || lay.length < best.length - kTouch) best = std::move(lay);
    first = false;
  };
  for (const Order& next : likely_orders(boxes, order)) attempt(next);
  if (boxes.size() <= kAllOrders) {
    while (std::ranges::next_permutation(order).found) attempt(order);
  }
  return best;
}

}  // namespace swathe
