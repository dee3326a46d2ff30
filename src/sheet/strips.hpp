#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "swathe/plane/point.hpp"

namespace swathe {

/// What lies on a page, found by the upright strips of the page that it reaches into.
class Strips {
 public:
  explicit Strips(const Box& page) : left_(page.empty() ? 0 : page.lo.x) {
    strips_.resize(page.empty() ? 1 : static_cast<std::size_t>(page.width() / kWidth) + 1);
  }

  void add(const Box& box, std::size_t item) {
    for (std::size_t k = strip_of(box.lo.x); k <= strip_of(box.hi.x); ++k)
      strips_[k].push_back(item);
  }

  /// Whether the test holds for an item near the box. One in several strips may be asked again.
  template <class Test>
  bool any_near(const Box& box, Test test) const {
    for (std::size_t k = strip_of(box.lo.x); k <= strip_of(box.hi.x); ++k)
      if (std::ranges::any_of(strips_[k], test)) return true;
    return false;
  }

 private:
  static constexpr double kWidth = 25.0;  ///< mm

  /// What lies off the page counts to its outer strips.
  std::size_t strip_of(double x) const {
    const double last = static_cast<double>(strips_.size() - 1);
    return static_cast<std::size_t>(std::clamp(std::floor((x - left_) / kWidth), 0.0, last));
  }

  double left_;
  std::vector<std::vector<std::size_t>> strips_;
};

}  // namespace swathe
