#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

// At which bytes each part of a TOML text stands. It is for changing one part and keeping the
// others: the parser gives only values, and forgets comments, spaces and order.
namespace swathe {

/// Bytes of a text, from `begin` up to `end`.
struct ByteSpan {
  std::size_t begin = 0, end = 0;
};

struct LaidPair;

struct LaidValue {
  enum class Kind { Plain, List, Table };
  Kind kind = Kind::Plain;
  ByteSpan at;
  std::vector<LaidValue> items;  ///< of a list
  std::vector<LaidPair> pairs;   ///< of an inline table
};

/// "key = value", on a line of its own or in an inline table.
struct LaidPair {
  std::vector<std::string> key;  ///< its parts, without quotes
  ByteSpan at;                   ///< from the key's first byte to the value's last
  ByteSpan line;  ///< of its own: its whole lines, comment included, less the last line's end
  LaidValue value;
};

/// A header and the pairs below it.
struct LaidSection {
  std::vector<std::string> header;  ///< empty for what stands before the first
  bool list = false;                ///< [[header]]
  ByteSpan line;                    ///< the header's, less its line's end
  std::vector<LaidPair> pairs;
};

/// The sections in the order of the text; the first has no header and may have no pairs.
///
/// Requires: the text parses; a byte order mark may stand before it.
std::vector<LaidSection> lay_out(std::string_view text);

/// The value that fills a whole text, as in `key = TEXT`: nothing beside it, not even a comment.
///
/// Requires: "key = TEXT" parses.
bool is_one_value(std::string_view text);

}  // namespace swathe
