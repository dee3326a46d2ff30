#pragma once

#include <cstddef>
#include <string>
#include <string_view>

// Values that people type who do not know TOML: what is wrong with one, and how it has to be typed.
namespace swathe {

/// What is wrong with a value as it is typed.
enum class Slip {
  None,
  NoValue,
  NoQuotes,          ///< width = 26 1/2 in
  CurlyQuotes,       ///< width = “26 in”
  NoClosingQuote,    ///< width = "26 in
  NoOpeningQuote,    ///< width = 26 in"
  QuoteInside,       ///< width = "26.5""
  LeadingZero,       ///< number = 00486
  BareBackslash,     ///< font = "C:\font.ttf"
  Capitals,          ///< filled = True
  DecimalComma,      ///< width = 26,5 in
  BarePoint,         ///< stretch_along = .01
  NoBrackets,        ///< from = "front", "50%"
  NoClosingBracket,  ///< from = ["front", "50%"
  Unknown,           ///< something that we cannot mend
};

struct ScannedValue {
  Slip slip = Slip::None;  ///< the first one, where there are several
  std::size_t begin = 0;   ///< of the value, in the text
  std::size_t end = 0;     ///< behind it
  std::size_t at = 0;      ///< of the piece at fault
  std::string piece;       ///< as it stands there
  std::string mended;      ///< the whole value; empty where it cannot be mended
};

/// Looks at the value that begins there, behind the "=" of its key.
///
/// Holds: what is mended is TOML; a value that is TOML has no slip.
ScannedValue scan_value(std::string_view text, std::size_t begin);

/// Whether a text is the value of a key, as TOML has it.
bool is_toml_value(std::string_view value);

/// A text in quotes, as TOML has it: in single ones where that needs no backslash.
std::string in_quotes(std::string_view text);

/// The place of the line's end, from there on.
std::size_t end_of_line(std::string_view text, std::size_t from);
std::string_view trimmed(std::string_view text);
/// Whether a line is the start of a table or of a key: what cannot stand inside a list.
bool begins_entry(std::string_view line);

}  // namespace swathe
