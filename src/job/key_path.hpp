#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "job/keys.hpp"
#include "swathe/base.hpp"

namespace swathe {

/// A name in a table, or a place in a list, counted from 0.
using PathStep = std::variant<std::string, std::size_t>;
using KeyPath = std::vector<PathStep>;

/// A key that somebody named, and what is known of it.
struct NamedKey {
  KeyPath path;
  const Key* key = nullptr;  ///< null for one of a list of tables, such as bumper.2
  bool whole = true;         ///< the key's value itself, not a part of it such as cloth.colors.red
};

/// Reads "bumper.2.from".
/// Refuses, at 1:1 of the file: UnknownKey (with the nearest known one), WrongType (a table).
Outcome<NamedKey> read_key_path(std::string_view text, const std::string& file);

/// A key's path with a number behind each list of tables in it: "bumper.2.from".
std::string with_number(std::string_view path, std::size_t number);
/// "bumper.name" of "bumper".
std::string_view first_key_in(std::string_view table);

/// "bumper.2.from", a name in quotes where it needs them.
std::string to_text(const KeyPath& path);
/// A name as it stands in a key: "red", "\"dark red\"".
std::string key_part(std::string_view name);
/// A text as a TOML string of one line.
std::string quoted_text(std::string_view text);

/// The parts of a key as TOML has it, without quotes; none where the text is no key.
std::vector<std::string> key_parts(std::string_view text);

}  // namespace swathe
