#pragma once

#include "base/texts.hpp"

namespace swathe::book_texts {

/// A text of src/book/data/en/texts.toml, with its values set in.
std::string say(std::string_view id, std::initializer_list<TextValue> values = {});

}  // namespace swathe::book_texts
