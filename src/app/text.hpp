#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

// Text for a terminal of 80 columns.
namespace swathe::app {

inline constexpr std::size_t kColumns = 80;

/// How many columns a line of UTF-8 takes: one a character, none for a change of color. (Wide
/// scripts take two; ours are not.)
std::size_t columns_of(std::string_view line);

/// The words of a text in lines of at most `columns`, broken at spaces, but not within "2 1/2"; a
/// word that is longer is broken within. At least one line, which may be empty.
std::vector<std::string> wrap(std::string_view text, std::size_t columns);

/// A paragraph: the first line begins with `head`, later ones with as many spaces.
std::string paragraph(std::string_view head, std::string_view text, std::size_t columns = kColumns);

/// What cannot be printed written out ("\x1b"), so that no text of a job can steer the terminal.
/// Line ends stay.
std::string printable(std::string_view text);

/// A word of the command line or the name of a file, of any bytes, as it may stand in a message: on
/// one line, and not longer than one can read.
std::string named(std::string_view name);

/// "1 page", "3 pages".
std::string count_of(std::size_t count, std::string_view one, std::string_view many);

}  // namespace swathe::app
