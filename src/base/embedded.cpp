#include "base/embedded.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

#include "embedded_externs.inc"

namespace swathe {
namespace {

const auto& table() {
  static const auto entries = std::to_array<Embedded>({
#include "embedded_table.inc"
  });
  return entries;
}

}  // namespace

std::span<const Embedded> all_embedded() { return table(); }

std::string_view embedded(std::string_view name) {
  const auto& entries = table();
  const auto found = std::ranges::lower_bound(entries, name, {}, &Embedded::name);
  return found != entries.end() && found->name == name ? found->bytes : std::string_view();
}

}  // namespace swathe
