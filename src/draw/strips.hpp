#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "swathe/plane.hpp"

namespace swathe {

/// What lies on a page, found by the upright strips of the page that it reaches into.
class Strips {
 public:
  explicit Strips(const plane::Box& page) : left_(page.empty() ? 0 : page.lo.x) {
    strips_.resize(page.empty() ? 1 : static_cast<std::size_t>(page.width() / kWidth) + 1);
  }

  void add(const plane::Box& box, std::size_t item) {
    const std::size_t first = strip_of(box.lo.x);
    for (std::size_t k = first; k <= strip_of(box.hi.x); ++k) strips_[k].push_back({item, first});
  }

  /// Whether the test holds for any item near the box; no item is asked twice.
  template <class Test>
  bool any_near(const plane::Box& box, Test test) const {
    const std::size_t first = strip_of(box.lo.x);
    for (std::size_t k = first; k <= strip_of(box.hi.x); ++k)
      for (const Item& item : strips_[k])
        // One in several strips is met in the first of those that the box reaches too.
        if (std::max(item.first_strip, first) == k && test(item.number)) return true;
    return false;
  }

 private:
  static constexpr double kWidth = 25.0;  ///< mm
  struct Item {
    std::size_t number, first_strip;
  };

  /// What lies off the page counts as in its outer strips.
  std::size_t strip_of(double x) const {
    const double last = static_cast<double>(strips_.size() - 1);
    return static_cast<std::size_t>(std::clamp(std::floor((x - left_) / kWidth), 0.0, last));
  }

  double left_;
  std::vector<std::vector<Item>> strips_;
};

}  // namespace swathe
