#include "table.hpp"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace swathe::app {
namespace {

constexpr std::size_t kBetween = 2;    // spaces between columns
constexpr std::size_t kNarrowest = 8;  // a column that wraps keeps room for one word

std::string padded(const std::string& text, std::size_t width, Column::Align align) {
  const std::size_t taken = columns_of(text);
  const std::string space(width > taken ? width - taken : 0, ' ');
  return align == Column::Align::Right ? space + text : text + space;
}

void end_line(std::string& out, std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  out += line + '\n';
}

}  // namespace

void Table::add(std::vector<std::string> cells) {
  assert(cells.size() == columns_.size());
  rows_.push_back({std::move(cells), {}});
}

void Table::add_note(std::string text, std::size_t under) {
  assert(!rows_.empty() && under < columns_.size());
  rows_.back().notes.push_back({std::move(text), under});
}

std::vector<std::size_t> Table::widths(std::size_t columns) const {
  std::vector<std::size_t> widths;
  for (std::size_t k = 0; k < columns_.size(); ++k) {
    std::size_t widest = columns_of(columns_[k].heading);
    for (const Row& row : rows_) widest = std::max(widest, columns_of(row.cells[k]));
    widths.push_back(widest);
  }
  const auto total = [&] {
    return std::accumulate(widths.begin(), widths.end(), kBetween * (columns_.size() - 1));
  };
  while (total() > columns) {
    std::size_t* widest = nullptr;
    for (std::size_t k = 0; k < columns_.size(); ++k)
      if (columns_[k].wraps && widths[k] > kNarrowest && (!widest || widths[k] > *widest))
        widest = &widths[k];
    if (!widest) break;
    --*widest;
  }
  return widths;
}

std::string Table::to_text(std::size_t indent, std::size_t columns) const {
  const std::vector<std::size_t> width = widths(columns > indent ? columns - indent : 1);
  std::string out;
  const auto put = [&](const std::vector<std::string>& cells) {
    std::vector<std::vector<std::string>> lines;
    std::size_t height = 1;
    for (std::size_t k = 0; k < cells.size(); ++k) {
      lines.push_back(wrap(cells[k], width[k]));
      height = std::max(height, lines.back().size());
    }
    for (std::size_t row = 0; row < height; ++row) {
      std::string line(indent, ' ');
      for (std::size_t k = 0; k < cells.size(); ++k) {
        if (k > 0) line += std::string(kBetween, ' ');
        line += padded(row < lines[k].size() ? lines[k][row] : "", width[k], columns_[k].align);
      }
      end_line(out, std::move(line));
    }
  };
  std::vector<std::string> headings;
  for (const Column& column : columns_) headings.push_back(column.heading);
  if (std::ranges::any_of(headings, [](const auto& heading) { return !heading.empty(); }))
    put(headings);
  for (const Row& row : rows_) {
    put(row.cells);
    for (const Note& note : row.notes) {
      std::size_t in = indent;
      for (std::size_t k = 0; k < note.under; ++k) in += width[k] + kBetween;
      out += paragraph(std::string(in, ' '), note.text, columns);
    }
  }
  return out;
}

}  // namespace swathe::app
