#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace swathe {

/// How many characters a text has; nothing where one of them cannot stand in a line of print: a
/// control, a line break, a mark that turns the direction of writing.
///
/// Requires: UTF-8.
std::optional<int> printable_characters(std::string_view text);

/// A text as it may stand in a sentence: its first characters, what cannot be printed as "?".
std::string clip(std::string_view text, std::size_t most_characters = 40);

}  // namespace swathe
