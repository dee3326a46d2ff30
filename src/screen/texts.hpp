#pragma once

#include <string>
#include <vector>

#include "base/texts.hpp"

namespace swathe::screen_texts {

/// A text of src/screen/data/en/texts.toml, with its values set in.
std::string say(std::string_view id, std::initializer_list<TextValue> values = {});

/// Names in a row: "B", "B and C", "B, C and D".
std::string listed(const std::vector<std::string>& names);

}  // namespace swathe::screen_texts
