#pragma once

#include "base/texts.hpp"

namespace swathe::tile_texts {

/// A text of src/tile/data/en/texts.toml, with its values set in.
std::string say(std::string_view id, std::initializer_list<TextValue> values = {});

}  // namespace swathe::tile_texts
