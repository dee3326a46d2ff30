#pragma once

#include <string_view>
#include <vector>

namespace swathe {

/// The name that takes the fewest single letters put in, left out or changed; the first of equals.
///
/// Requires: at least one name. Source: the Wagner-Fischer table of edit distances.
std::string_view nearest_name(std::string_view word, const std::vector<std::string_view>& names);

}  // namespace swathe
