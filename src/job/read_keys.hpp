#pragma once

#include "job/each_key.hpp"
#include "job/table_reader.hpp"

namespace swathe {

template <class... Functions>
struct Cases : Functions... {
  using Functions::operator()...;
};
template <class... Functions>
Cases(Functions...) -> Cases<Functions...>;

/// Reads all keys of a table: `by_hand(name, member)` where there is one for a member of that type,
/// else by their description.
template <class Keys, class... ByHand>
void read_keys(TableReader& in, Keys& keys, ByHand... by_hand) {
  each_key(keys, [&](std::string_view name, auto&&) { in.require(name); });
  each_key(keys, Cases{std::move(by_hand)..., [&](std::string_view name, auto&& member) -> void {
                         in.read(name, member);
                       }});
}

}  // namespace swathe
