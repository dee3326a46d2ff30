#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base/length.hpp"
#include "swathe/base/units.hpp"

namespace swathe {

/// A sheet of paper that can be asked for by name, standing: width is the shorter edge.
struct Paper {
  std::string name;
  Length width, height;
};

/// The name of paper that comes off a roll: a width, and as long as a page needs.
inline constexpr std::string_view kRoll = "roll";

/// Every paper known, by name.
std::vector<Paper> papers();
std::optional<Paper> find_paper(std::string_view name);
/// What an office prints on where people measure in these units.
const Paper& office_paper(Units units);

}  // namespace swathe
