#include <algorithm>
#include <functional>

#include "stock/bin_packing.hpp"

namespace swathe {

std::size_t bins_at_least(std::vector<std::int64_t> sizes, std::int64_t capacity) {
  std::ranges::sort(sizes, std::ranges::greater());
  std::vector<std::int64_t> before(sizes.size() + 1, 0);  // before[i]: sum of the i largest
  for (std::size_t i = 0; i < sizes.size(); ++i) before[i + 1] = before[i] + sizes[i];
  const auto number_above = [&](std::int64_t size) {  // how many are larger than `size`
    return static_cast<std::size_t>(std::ranges::lower_bound(sizes, size, std::ranges::greater()) -
                                    sizes.begin());
  };

  std::int64_t most = (before.back() + capacity - 1) / capacity;
  // For a threshold k: items above capacity - k need a bin with nothing of k or more beside them,
  // those above half the capacity one each; what of the rest is at least k fills the room left.
  const auto try_threshold = [&](std::int64_t k) {
    const std::size_t alone = number_above(capacity - k);
    const std::size_t halves = std::max(alone, number_above(capacity / 2));
    const std::size_t counted = std::max(halves, number_above(k - 1));
    const auto own = static_cast<std::int64_t>(halves - alone);
    const std::int64_t room = own * capacity - (before[halves] - before[alone]);
    const std::int64_t rest = before[counted] - before[halves];
    const std::int64_t more = std::max<std::int64_t>(0, (rest - room + capacity - 1) / capacity);
    most = std::max(most, static_cast<std::int64_t>(halves) + more);
  };
  try_threshold(0);
  for (const std::int64_t size : sizes) {
    if (2 * size <= capacity) try_threshold(size);
  }
  return static_cast<std::size_t>(most);
}

}  // namespace swathe
