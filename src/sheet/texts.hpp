#pragma once

#include <string>
#include <vector>

#include "base/texts.hpp"

namespace swathe::sheet_texts {

/// A text of src/sheet/data/en/texts.toml, with its values set in.
std::string say(std::string_view id, std::initializer_list<TextValue> values = {});

/// Names in a row: "B", "B and C", "B, C and D".
std::string listed(const std::vector<std::string>& names);

}  // namespace swathe::sheet_texts
