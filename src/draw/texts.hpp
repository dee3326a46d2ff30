#pragma once

#include "base/texts.hpp"

namespace swathe::draw_texts {

/// A text of src/draw/data/en/texts.toml, with its values set in.
std::string say(std::string_view id, std::initializer_list<TextValue> values = {});

}  // namespace swathe::draw_texts
