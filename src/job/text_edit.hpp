#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/toml_layout.hpp"
#include "job/key_path.hpp"
#include "swathe/base.hpp"

namespace swathe {

/// Bytes of a text, and what stands in their place.
struct Edit {
  ByteSpan where;
  std::string text;
};

/// What is to be done to a text, and what the key is called there.
struct Edits {
  std::vector<Edit> list;  ///< in the order of the text
  KeyPath path;            ///< as the text spells it
  std::string before;
};

/// A TOML text, to be changed in one place: finds where a key stands, or where it would.
class TextEdit {
 public:
  /// Requires: `text` parses, and outlives this. `file` stands in places.
  TextEdit(std::string_view text, std::string file);

  /// What set_value() does to the text; it says what each refuses.
  Outcome<Edits> set(const KeyPath& path, const std::string& value) const;
  Outcome<Edits> remove(const KeyPath& path) const;

 private:
  struct Found;

  // What the text has.
  Found find(const KeyPath& path) const;
  void look_inside(Found& found, const KeyPath& path) const;
  KeyPath full_path(std::size_t section, const LaidPair& pair) const;
  bool is_there(const KeyPath& path) const;         ///< as a table, or above one
  std::size_t count_of(const KeyPath& list) const;  ///< of a list of tables

  // What is added: into braces or brackets, as a line, as a table.
  Outcome<Edits> add_inside(const Found& found, const KeyPath& path, const std::string& value,
                            Edits edits) const;
  Outcome<Edits> add_line(const KeyPath& path, const std::string& value, Edits edits) const;
  Outcome<Edits> add_section(const std::string& value, Edits edits) const;
  std::vector<Edit> add_item(const LaidValue& list, const std::string& item) const;
  Edit below(const LaidPair& pair, const std::string& line) const;
  Edit new_section(const KeyPath& table, const std::string& lines) const;
  Edit after_section(std::size_t section, const std::string& lines) const;

  // Lines, by the place of a byte in them.
  std::string line_end(std::size_t near) const;  ///< "\n" or "\r\n", as the lines there have it
  std::size_t end_of_line(std::size_t at) const;
  std::string_view line_at(std::size_t at) const;
  std::size_t next_line(std::size_t at) const;
  std::string indent_of(std::size_t line) const;
  Place place_of(std::size_t at) const;

  std::string_view text_;
  std::string file_;
  std::vector<LaidSection> sections_;
  std::vector<KeyPath> paths_;  ///< of each section
};

}  // namespace swathe
