#include "base/nearest.hpp"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace swathe {
namespace {

std::size_t edits_between(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, changed});
    }
  }
  return row[b.size()];
}

}  // namespace

std::string_view nearest_name(std::string_view word, const std::vector<std::string_view>& names) {
  assert(!names.empty());
  word = word.substr(0, 64);  // no name of ours is that long
  return *std::ranges::min_element(
      names, {}, [&](std::string_view name) { return edits_between(word, name); });
}

}  // namespace swathe
