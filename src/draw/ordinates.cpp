#include "draw/ordinates.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swathe {
namespace {

constexpr double kStub = 1.5;   ///< straight part of a leader at the drawing
constexpr double kSlant = 5.0;  ///< part in which it moves sideways
constexpr double kGap = 1.2;    ///< between a leader and its figure

struct Pool {
  double sum = 0;
  int count = 0;
  double mean() const { return sum / count; }
};

}  // namespace

std::vector<double> spread(const std::vector<double>& targets, double pitch, double lo, double hi) {
  const int n = static_cast<int>(targets.size());
  if (n == 0) return {};
  if (n > 1) pitch = std::min(pitch, (hi - lo) / (n - 1));
  std::vector<Pool> pools;
  for (int k = 0; k < n; ++k) {
    pools.push_back({targets[static_cast<std::size_t>(k)] - k * pitch, 1});
    while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
      const Pool last = pools.back();
      pools.pop_back();
      pools.back() = {pools.back().sum + last.sum, pools.back().count + last.count};
    }
  }
  std::vector<double> places;
  for (const Pool& pool : pools)
    for (int k = 0; k < pool.count; ++k) {
      const double base = std::clamp(pool.mean(), lo, std::max(lo, hi - (n - 1) * pitch));
      places.push_back(base + pitch * static_cast<double>(places.size()));
    }
  return places;
}

double ordinate_reach(const Font& labels, const std::string& figure, double height_mm) {
  return 2 * kStub + kSlant + kGap + labels.text_width_mm(figure, height_mm);
}

plane::Box draw_ordinates(Drawing& onto, const Font& labels, std::vector<Ordinate> ordinates,
                          OrdinateEdge edge, double edge_at, double lo, double hi,
                          double height_mm) {
  std::ranges::stable_sort(ordinates, {}, &Ordinate::at);
  // Two places with the same figure are one place on a tape measure.
  ordinates.erase(
      std::unique(ordinates.begin(), ordinates.end(),
                  [](const Ordinate& a, const Ordinate& b) { return a.figure == b.figure; }),
      ordinates.end());
  std::vector<double> targets;
  for (const Ordinate& ordinate : ordinates) targets.push_back(ordinate.at);
  const std::vector<double> places = spread(targets, kFigurePitch * height_mm, lo, hi);

  const bool level = edge == OrdinateEdge::Above || edge == OrdinateEdge::Below;
  const double out = edge == OrdinateEdge::Above || edge == OrdinateEdge::Right ? 1.0 : -1.0;
  // `a` runs along the edge, `b` away from the drawing.
  const auto point = [&](double a, double b) {
    return level ? FlatPoint{a, edge_at + out * b} : FlatPoint{edge_at + out * b, a};
  };
  plane::Box taken;
  for (std::size_t k = 0; k < ordinates.size(); ++k) {
    const double from = targets[k], to = places[k];
    onto.line(LineKind::Thin,
              plane::open_path({point(from, 0), point(from, kStub), point(to, kStub + kSlant),
                                point(to, kStub + kSlant + kStub)}));
    TextMark text;
    text.text = ordinates[k].figure;
    text.height_mm = height_mm;
    text.at = point(to, 2 * kStub + kSlant + kGap);
    if (level) {
      text.at.x += 0.5 * height_mm;
      text.turn = 0.5 * std::numbers::pi;
      text.anchor = out > 0 ? draw::Anchor::Left : draw::Anchor::Right;
    } else {
      text.at.y -= 0.5 * height_mm;
      text.anchor = out > 0 ? draw::Anchor::Left : draw::Anchor::Right;
    }
    taken.cover(point(to - 0.5 * height_mm, 0));
    taken.cover(point(to + 0.5 * height_mm, ordinate_reach(labels, text.text, height_mm)));
    onto.text(std::move(text));
  }
  return taken;
}

}  // namespace swathe
