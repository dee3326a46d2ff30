#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace swathe {

/// How much of a file's name a message quotes, in characters.
inline constexpr std::size_t kMostQuoted = 240;

/// One character of a text, or one byte that is not part of a character.
struct Character {
  std::string_view bytes;
  std::optional<char32_t> code;  ///< nothing: no UTF-8
};

/// Takes one character off the front of a text of any bytes. Requires: the text is not empty.
/// Source: RFC 3629, section 4.
Character take_character(std::string_view& text);

/// Whether a character can be printed in a line. These cannot: controls, line breaks, format
/// characters (such as those that change the direction of writing), characters with no width, and
/// code points that are not characters.
bool is_printable(char32_t code);

/// How many characters a text has.
///
/// Requires: UTF-8.
int characters_in(std::string_view text);

/// The first character of a text that cannot be printed; nothing where all can.
///
/// Requires: UTF-8.
std::optional<char32_t> first_unprintable(std::string_view text);

/// Where the first word of a text ends, for lines that are broken at spaces: a fraction is one word
/// with its whole number, as "2" at a line's end and "1/2" below it would misread.
std::size_t end_of_word(std::string_view text);

/// "U+200B"
std::string code_words(char32_t code);

/// A text as it may stand in a sentence: its first characters, what cannot be printed as "?"; "…"
/// stands for the rest.
std::string clip(std::string_view text, std::size_t most_characters = 40);

/// Any bytes as one printable line: bytes that are not UTF-8 or cannot be printed become "\x1b" and
/// the like. If everything can be printed, the bytes stay as they are.
std::string escaped(std::string_view bytes);

/// The name of a file, of any bytes, as it may stand in a message: escaped; "…" stands for the
/// middle of one that is longer than `most_characters`.
std::string quoted_name(std::string_view name, std::size_t most_characters = kMostQuoted);

/// Names to choose from: "front", "left" or "back", each in quotes.
std::string quoted_choice(const std::vector<std::string>& names);

}  // namespace swathe
