#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include "swathe/plane.hpp"
#include "swathe/type.hpp"

namespace swathe::test {

/// The ink of a digit in pixels. Slow and plain, and nothing of it is shared with what it checks.
class Raster {
 public:
  Raster(const std::vector<type::Curve>& curves, double em, const plane::Box& ink, double pixel)
      : pixel_(pixel),
        lo_{ink.lo.x - 3 * pixel, ink.lo.y - 3 * pixel},
        width_(static_cast<int>(ink.width() / pixel) + 7),
        height_(static_cast<int>(ink.height() / pixel) + 7) {
    paint(curves, em);
    find_blanks();
  }

  /// From a point in the ink to the nearest middle of a pixel without.
  double to_blank(FlatPoint p) const {
    const double x = (p.x - lo_.x) / pixel_ - 0.5, y = (p.y - lo_.y) / pixel_ - 0.5;
    const int i = static_cast<int>(x + 0.5);
    double best = 1e9;
    for (int j = 0; j < height_; ++j) {
      if ((j - y) * (j - y) >= best) continue;
      for (const int blank : {blank_left_[index(i, j)], blank_right_[index(i, j)]}) {
        best = std::min(best, (blank - x) * (blank - x) + (j - y) * (j - y));
      }
    }
    return pixel_ * std::sqrt(best);
  }

 private:
  std::size_t index(int i, int j) const {
    return static_cast<std::size_t>(j) * static_cast<std::size_t>(width_) +
           static_cast<std::size_t>(i);
  }

  void paint(const std::vector<type::Curve>& curves, double em) {
    std::vector<std::vector<std::pair<double, int>>> crossings(static_cast<std::size_t>(height_));
    FlatPoint at, start;
    const auto cross_rows = [&](FlatPoint to) {
      const FlatPoint a = at, b = em * to;
      at = b;
      for (int j = 0; j < height_; ++j) {
        const double y = lo_.y + (j + 0.5) * pixel_;
        if ((a.y <= y) == (b.y <= y)) continue;
        crossings[static_cast<std::size_t>(j)].push_back(
            {a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y), a.y < b.y ? 1 : -1});
      }
    };
    for (const type::Curve& c : curves) {
      if (c.verb == type::Curve::Verb::Move) at = em * c.to, start = c.to;
      if (c.verb == type::Curve::Verb::Line) cross_rows(c.to);
      if (c.verb == type::Curve::Verb::Close) cross_rows(start);
      if (c.verb != type::Curve::Verb::Cubic) continue;
      const FlatPoint from = (1 / em) * at;
      for (int k = 1; k <= 48; ++k) {
        const double t = k / 48.0, s = 1 - t;
        cross_rows(s * s * s * from + 3 * s * s * t * c.a + 3 * s * t * t * c.b + t * t * t * c.to);
      }
    }
    ink_.assign(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_), false);
    for (int j = 0; j < height_; ++j) {
      auto& row = crossings[static_cast<std::size_t>(j)];
      std::sort(row.begin(), row.end());
      int winding = 0;
      std::size_t next = 0;
      for (int i = 0; i < width_; ++i) {
        const double x = lo_.x + (i + 0.5) * pixel_;
        while (next < row.size() && row[next].first <= x) winding += row[next++].second;
        ink_[index(i, j)] = winding != 0;
      }
    }
  }

  /// For each pixel the nearest one without ink in its row, to either side or itself.
  void find_blanks() {
    blank_left_.resize(ink_.size());
    blank_right_.resize(ink_.size());
    for (int j = 0; j < height_; ++j) {
      int last = 0;  // the margin is blank
      for (int i = 0; i < width_; ++i) {
        if (!ink_[index(i, j)]) last = i;
        blank_left_[index(i, j)] = last;
      }
      for (int i = width_ - 1; i >= 0; --i) {
        if (!ink_[index(i, j)]) last = i;
        blank_right_[index(i, j)] = last;
      }
    }
  }

  double pixel_;
  FlatPoint lo_;
  int width_, height_;
  std::vector<bool> ink_;
  std::vector<int> blank_left_, blank_right_;
};

}  // namespace swathe::test
