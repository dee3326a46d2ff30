#pragma once

#include <string>
#include <string_view>

#include "swathe/base/outcome.hpp"

namespace swathe {

/// A job's text in which one value is changed, and every other byte is as it was.
struct ValueChange {
  std::string text;
  std::string key;            ///< "bumper.2.from", as the text spells it
  std::string before, after;  ///< the values as they stand in the text; empty where there is none
};

/// Gives a key of a job's text another value, or adds it: to its table after the last key there, or
/// in a table of its own.
///
/// `key` counts from 1 where there are many: "bumper.2.from". `value` is TOML, or the bare text of
/// a string; of a key that is always a text, such as job.number, whatever is not in quotes. `file`
/// stands in places.
///
/// Holds: (1) the new text parses as the old one does with that value in its place
///        (2) what it does not say is byte for byte as it was
///        (3) giving the old value back gives the old text
/// Refuses: what parse_toml refuses of the text; UnknownKey; WrongType (a table is no value, or
///   something else stands where its table should be); OutOfRange (a number past the next);
///   Malformed (a value that is no text).
Outcome<ValueChange> set_value(std::string_view text, std::string_view key, std::string_view value,
                               const std::string& file = "job");

/// Takes a key out of a job's text, with a comment on its line; comments above it stay.
///
/// Holds: (2) of set_value
/// Refuses: as set_value; Missing (the key is not there).
Outcome<ValueChange> remove_value(std::string_view text, std::string_view key,
                                  const std::string& file = "job");

}  // namespace swathe
