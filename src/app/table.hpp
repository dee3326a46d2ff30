#pragma once

#include <string>
#include <vector>

#include "text.hpp"

namespace swathe::app {

/// A column of a table on the terminal.
struct Column {
  std::string heading;
  enum class Align { Left, Right } align = Align::Left;
  bool wraps = false;  ///< may be made narrower than its widest cell
};

/// Aligned rows within the terminal's width. Columns that wrap are made narrower, the widest first,
/// until the table fits.
class Table {
 public:
  explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}

  /// Requires: one cell for each column.
  void add(std::vector<std::string> cells);
  /// A sentence below the last row, indented to the column with the number `under`.
  void add_note(std::string text, std::size_t under = 0);
  bool empty() const { return rows_.empty(); }

  /// Every line ends with a line end and without spaces before it. `indent` spaces stand before
  /// each line and count against `columns`.
  std::string to_text(std::size_t indent = 0, std::size_t columns = kColumns) const;

 private:
  std::vector<std::size_t> widths(std::size_t columns) const;

  struct Note {
    std::string text;
    std::size_t under;
  };
  struct Row {
    std::vector<std::string> cells;
    std::vector<Note> notes;
  };

  std::vector<Column> columns_;
  std::vector<Row> rows_;
};

}  // namespace swathe::app
