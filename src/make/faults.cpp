#include "make/faults.hpp"

#include <algorithm>
#include <tuple>

namespace swathe {

Refusals in_order(Refusals faults) {
  std::ranges::stable_sort(faults, [](const Refusal& a, const Refusal& b) {
    return std::tie(a.place.file, a.place.line, a.place.column) <
           std::tie(b.place.file, b.place.line, b.place.column);
  });
  const auto same = [](const Refusal& a, const Refusal& b) { return to_text(a) == to_text(b); };
  faults.erase(std::unique(faults.begin(), faults.end(), same), faults.end());
  return faults;
}

}  // namespace swathe
